// The sheet of a preparation: for the screen and for paper.

import { rounded } from "../format";
import type { Bottle, Lesson, Section, Sheet } from "../preparing";
import { said } from "../words";
import { pageWords } from "../words/page_words";
import { prepare as english } from "../words/prepare.en";
import { capital } from "../words/quantities";
import { lowered } from "../formula";
import { HazardLabel } from "./hazard_label";

export const prepareWords = pageWords(english, async () => (await import("../words/prepare.de")).prepare);
const words = prepareWords;

function Part({ section }: { section: Section }) {
  const { head, steps, lines, labels } = section;
  return (
    <section class="sheet-part">
      <h3>{capital(said(head))}</h3>
      {steps.length > 0 && (
        <ol>
          {steps.map((step) => (
            <li key={step}>{said(step)}</li>
          ))}
        </ol>
      )}
      {lines.length > 0 && (
        <ul class="cautions">
          {lines.map((line) => (
            <li key={line}>{said(line)}</li>
          ))}
        </ul>
      )}
      {labels.length > 0 && (
        <div class="sheet-labels">
          {labels.map((label) => (
            <div key={label.of}>
              <h4>{said(label.of)}</h4>
              <HazardLabel label={label} />
            </div>
          ))}
        </div>
      )}
    </section>
  );
}

function Timetable({ lesson }: { lesson: Lesson }) {
  return (
    <section class="sheet-part">
      <h3>{said(lesson.head)}</h3>
      <table class="timetable">
        <tbody>
          {lesson.parts.map(({ part, minutes }) => (
            <tr key={part}>
              <th scope="row">{said(part)}</th>
              <td>{rounded(minutes, 0)} min</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>{said(lesson.left)}</p>
    </section>
  );
}

function BottleLabel({ bottle }: { bottle: Bottle }) {
  const { name, formula, concentration_mol_dm3, label } = bottle;
  return (
    <div class="bottle-label">
      <p>
        <b>{capital(said(name))}</b> {lowered(formula)}
      </p>
      <p>{concentration_mol_dm3 === null ? said("concentration to be found") : words().strength(concentration_mol_dm3)}</p>
      <HazardLabel label={label} />
      <p class="made">{said("Made on: ________ by: ________")}</p>
    </div>
  );
}

/** Every label as often as it is wanted on paper; on the screen one of each with how often. */
function Labels({ bottles }: { bottles: readonly Bottle[] }) {
  if (bottles.length === 0) return null;
  return (
    <section class="bottle-labels">
      <h3>{words().labels}</h3>
      <p class="not-printed">{words().labelsWhy}</p>
      {bottles.map((bottle) => (
        <div class="bottle-kind" key={bottle.name}>
          <p class="not-printed">{words().count(bottle.count)}</p>
          {Array.from({ length: bottle.count }, (_, index) => (
            <BottleLabel key={index} bottle={bottle} />
          ))}
        </div>
      ))}
    </section>
  );
}

export function PrepareSheet({ sheet, lesson_min }: { sheet: Sheet; lesson_min: number }) {
  return (
    <article class="preparation figure">
      <h2>{words().title(said(sheet.practical), sheet.benches)}</h2>
      <p class="sheet-first">{said(sheet.first)}</p>
      {sheet.sections.map((section) => (
        <Part key={section.head} section={section} />
      ))}
      {sheet.lessons
        .filter(({ minutes }) => minutes === lesson_min)
        .map((lesson) => (
          <Timetable key={lesson.minutes} lesson={lesson} />
        ))}
      <Labels bottles={sheet.bottles} />
    </article>
  );
}
