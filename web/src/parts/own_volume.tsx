// The own lines as typed values, and the reading that the students commit to.

import { useState } from "preact/hooks";
import type { Act } from "../acts";
import type { View } from "../contract";
import { decimal, fixed } from "../format";
import { type Met, type OwnLines, type Side, placedLine } from "../own_lines";
import { typedNumber } from "../typed";
import { words } from "../words";
import type { Acting } from "./acting";
import { OwnNothing } from "./own_nothing";

const SIDES: readonly Side[] = ["before", "after"];
const WHICH: readonly (0 | 1)[] = [0, 1];

interface FieldsProps {
  lines: OwnLines;
  range_c: readonly [number, number];
  move: (side: Side, which: 0 | 1, temperature_c: number) => void;
}

/** Four temperatures instead of four handles. */
export function OwnFields({ lines, range_c, move }: FieldsProps) {
  return (
    <details class="own-fields">
      <summary>{words.ownLines.type}</summary>
      {SIDES.map((side) =>
        WHICH.map((which) => {
          const { volume_cm3, temperature_c } = lines[side][which];
          return (
            <Field
              key={`${side} ${which}`}
              name={words.ownLines.field(side, volume_cm3)}
              value_c={temperature_c}
              range_c={range_c}
              take={(typed_c) => move(side, which, typed_c)}
            />
          );
        }),
      )}
    </details>
  );
}

interface FieldProps {
  name: string;
  value_c: number;
  range_c: readonly [number, number];
  take: (typed_c: number) => void;
}

/** A temperature that counts when the field is left; what cannot be on the chart is not taken. */
function Field({ name, value_c, range_c, take }: FieldProps) {
  const [draft, setDraft] = useState<string | null>(null);
  const leave = () => {
    const typed_c = draft === null ? null : typedNumber(draft);
    if (typed_c !== null && typed_c >= range_c[0] && typed_c <= range_c[1]) take(typed_c);
    setDraft(null);
  };
  return (
    <label>
      {name}
      <input
        type="text"
        inputMode="decimal"
        autocomplete="off"
        value={draft ?? decimal(fixed(value_c, 2))}
        onInput={(event) => setDraft(event.currentTarget.value)}
        onKeyDown={(event) => event.key === "Enter" && leave()}
        onBlur={leave}
      />
    </label>
  );
}

interface VolumeProps {
  view: View;
  acting: Acting;
  lines: OwnLines;
  met: Met | null;
  most_cm3: number;
  done: () => void;
}

/** The volume that is committed to: that of the crossing, unless another is typed. */
export function OwnVolume({ view, acting, lines, met, most_cm3, done }: VolumeProps) {
  const [typed, setTyped] = useState<string | null>(null);
  const [wrong, setWrong] = useState(false);
  const shown = typed ?? (met ? decimal(fixed(met.volume_cm3, 1)) : "");
  const commit = async (act: Act) => {
    if (await acting.send(act)) done();
  };
  const submit = (event: Event) => {
    event.preventDefault();
    const volume_cm3 = typedNumber(shown);
    const readable = volume_cm3 !== null && volume_cm3 > 0 && volume_cm3 <= most_cm3;
    setWrong(!readable);
    if (!readable) return;
    const drawn = met === null ? {} : { before: placedLine(lines.before), after: placedLine(lines.after) };
    void commit({ act: "own_reading", end_point_cm3: volume_cm3, ...drawn });
  };
  return (
    <form class="own-volume" onSubmit={submit}>
      <label>
        {words.ownLines.own}
        <input
          type="text"
          inputMode="decimal"
          autocomplete="off"
          value={shown}
          aria-invalid={wrong}
          aria-describedby="own-from"
          onInput={(event) => setTyped(event.currentTarget.value)}
        />
      </label>
      <p id="own-from" class="remark">
        {words.ownLines.fromCrossing}
      </p>
      {wrong && (
        <p class="trouble" role="alert">
          {words.ownLines.notAVolume(most_cm3)}
        </p>
      )}
      <div class="answers">
        {typed !== null && met !== null && (
          <button type="button" onClick={() => setTyped(null)}>
            {words.ownLines.useCrossing}
          </button>
        )}
        <button type="submit" class="strong" aria-disabled={acting.busy}>
          {acting.busy ? words.sending : words.ownLines.commit}
        </button>
      </div>
      <p class="remark">
        {view.results.rule === "when shown" ? words.ownLines.commitWait : words.ownLines.commitNow}
      </p>
      <OwnNothing acting={acting} done={done} />
    </form>
  );
}
