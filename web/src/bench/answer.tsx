// The answer comes first: the question's own quantity, in a sentence, and the reaction that it follows from.

import { keptTogether, lowered } from "../format";
import type { View } from "../live/contract";
import { Explained } from "../page/terms";
import { answerText } from "../phrases/answer";
import { marked, phrase } from "../words";

export function Answer({ view }: { view: View }) {
  const text = answerText(view);
  if (text === "") return null;
  return (
    <section class="answer">
      <h2>{phrase("page-answer-title")}</h2>
      <p class="answer-text" data-testid="answer"><Explained text={keptTogether(text).replace(/ (.?±.?) /g, "\u00a0$1\u00a0")} /></p>
      {view.reaction && <p class="answer-reaction"><Explained text={marked("page-answer-reaction", { equation_text: lowered(view.reaction.equation) })} /></p>}
    </section>
  );
}
