// Sound is offered once on a device, before the practical begins.

import { phrase } from "../words";
import { sound } from "./sound";

export function SoundOffer() {
  return (
    <section class="sound-offer" aria-labelledby="sound-offer">
      <p id="sound-offer">{phrase("page-doing-sound-offer")}</p>
      <button type="button" class="plain" data-sound="offer" onClick={() => void sound.press()}>
        {phrase("page-doing-sound", { which: "undecided" })}
      </button>
      <button type="button" class="plain" onClick={() => sound.decline()}>
        {phrase("page-doing-sound-without")}
      </button>
    </section>
  );
}
