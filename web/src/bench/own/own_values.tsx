// What students read off by themselves: a volume from their lines, a change of temperature, or nothing.

import { useState } from "preact/hooks";
import { decimal, fixed, short, signed, typedNumber } from "../../format";
import type { Act, Acting } from "../../live/acts";
import type { OnceView, View } from "../../live/contract";
import { ReasonField, useReason } from "../../page/forms";
import { phrase } from "../../words";
import { AskOnce } from "./commit";
import { type Met, type OwnLines, type Side, placedLine } from "./lines";

// The own lines as typed values, and the reading that the students commit to.

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
      <summary>{phrase("page-own-lines-type")}</summary>
      {SIDES.map((side) =>
        WHICH.map((which) => {
          const { volume_cm3, temperature_c } = lines[side][which];
          return (
            <Field
              key={`${side} ${which}`}
              name={phrase("page-own-lines-field", { side, volume: short(volume_cm3) })}
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
  const [asks, ask] = useState<number | null>(null);
  const shown = typed ?? (met ? decimal(fixed(met.volume_cm3, 1)) : "");
  const commit = async (act: Act) => {
    if (await acting.send(act)) done();
  };
  const submit = (event: Event) => {
    event.preventDefault();
    const volume_cm3 = typedNumber(shown);
    const readable = volume_cm3 !== null && volume_cm3 > 0 && volume_cm3 <= most_cm3;
    setWrong(!readable);
    if (readable) ask(volume_cm3);
  };
  if (asks !== null) {
    const drawn = met === null ? {} : { before: placedLine(lines.before), after: placedLine(lines.after) };
    return (
      <AskOnce
        reading={phrase("page-volume", { volume: short(asks) })}
        drawn={met !== null}
        busy={acting.busy}
        commit={(reason) => void commit({ act: "own_reading", end_point_cm3: asks, ...drawn, ...(reason === null ? {} : { reason }) })}
        back={() => ask(null)}
      />
    );
  }
  return (
    <form class="own-volume" onSubmit={submit}>
      <label>
        {phrase("page-own-lines-own")}
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
        {phrase("page-own-lines-from-crossing")}
      </p>
      {wrong && (
        <p class="trouble" role="alert">
          {phrase("page-own-lines-not-avolume", { most: short(most_cm3) })}
        </p>
      )}
      <div class="answers">
        {typed !== null && met !== null && (
          <button type="button" onClick={() => setTyped(null)}>
            {phrase("page-own-lines-use-crossing")}
          </button>
        )}
        <button type="submit" class="strong" aria-disabled={acting.busy}>
          {acting.busy ? phrase("page-sending") : phrase("page-own-lines-commit")}
        </button>
      </div>
      <p class="remark">
        {view.results.rule === "when shown" ? phrase("page-own-lines-commit-wait") : phrase("page-own-lines-commit-now")}
      </p>
      <OwnNothing view={view} acting={acting} done={done} />
    </form>
  );
}

// The change of temperature that the students read off the curve of one mixing, and commit to.

interface OwnChangeProps {
  view: OnceView;
  acting: Acting;
  /** Called once a reading is kept. */
  done: () => void;
}

/** No change in a cup is larger / °C. */
const MOST_C = 65;

export function OwnChange({ view, acting, done }: OwnChangeProps) {
  const known_c = view.own_reading?.change_c ?? null;
  const [typed, setTyped] = useState(known_c === null ? "" : decimal(signed(known_c, 2)));
  const [wrong, setWrong] = useState(false);
  const [asks, ask] = useState<number | null>(null);
  const commit = async (change_c: number) => {
    if (await acting.send({ act: "own_reading", change_c })) done();
  };
  const submit = (event: Event) => {
    event.preventDefault();
    const change_c = typedNumber(typed);
    const readable = change_c !== null && Math.abs(change_c) <= MOST_C;
    setWrong(!readable);
    if (readable) ask(change_c);
  };
  if (asks !== null) {
    return (
      <AskOnce
        reading={phrase("page-celsius", { temperature: signed(asks, 2) })}
        drawn
        busy={acting.busy}
        commit={() => void commit(asks)}
        back={() => ask(null)}
      />
    );
  }
  return (
    <form class="own-volume" data-testid="own-reading" onSubmit={submit}>
      <h3>{phrase("page-own-lines-once-title")}</h3>
      <p>{phrase("page-own-lines-once-task")}</p>
      <label>
        {phrase("page-own-lines-once-own")}
        <input
          type="text"
          autocomplete="off"
          value={typed}
          aria-invalid={wrong}
          aria-describedby="own-sign"
          onInput={(event) => setTyped(event.currentTarget.value)}
        />
      </label>
      <p id="own-sign" class="remark">
        {phrase("page-own-lines-once-sign")}
      </p>
      {wrong && (
        <p class="trouble" role="alert">
          {phrase("page-own-lines-not-achange")}
        </p>
      )}
      <button type="submit" class="strong" aria-disabled={acting.busy}>
        {acting.busy ? phrase("page-sending") : phrase("page-own-lines-commit")}
      </button>
      <p class="remark">
        {view.results.rule === "when shown" ? phrase("page-own-lines-commit-wait") : phrase("page-own-lines-commit-now")}
      </p>
      <OwnNothing view={view} acting={acting} done={done} />
    </form>
  );
}

// The way on for students who could not read anything: they say why, for it cannot be undone when results follow.

interface Props {
  view: View;
  acting: Acting;
  done: () => void;
}

function OwnNothing({ view, acting, done }: Props) {
  const [asked, ask] = useState(false);
  const reason = useReason(view.plan, "reading");
  if (!asked) {
    return (
      <button type="button" onClick={() => ask(true)}>
        {phrase("page-own-lines-nothing")}
      </button>
    );
  }
  const commit = async () => {
    if (await acting.send({ act: "own_reading", reason: reason.told })) done();
  };
  return (
    <div class="own-nothing" role="group" aria-label={phrase("page-own-lines-nothing")}>
      <p role="status">{phrase("page-own-lines-nothing-ask")}</p>
      <ReasonField reason={reason} />
      <div class="answers">
        <button type="button" disabled={acting.busy || reason.told === ""} onClick={() => void commit()}>
          {phrase("page-own-lines-nothing-yes")}
        </button>
        <button type="button" onClick={() => ask(false)}>
          {phrase("page-no")}
        </button>
      </div>
    </div>
  );
}
