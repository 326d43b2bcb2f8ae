// One bench on the board. Who needs help is told from afar by shape, word and colour, never by colour alone.

import { Component } from "preact";
import { freshness } from "../age";
import { said } from "../words";
import { roomWords as words } from "../words/room_topic";
import type { Reason, Tile } from "./contract";

interface Props {
  tile: Tile;
  /** How long ago anything was heard / s, whole seconds; null: never. */
  age_s: number | null;
  /** Set where no names may be seen. */
  number: string | null;
  /** Set while benches are being chosen. */
  chosen: boolean | null;
  choose: (bench: string) => void;
}

const MARKS = { 0: "", 1: "", 2: "M12 3a9 9 0 1 0 .01 0zM12 7v6M12 16v1", 3: "M12 3L22 21H2zM12 9v6M12 17v1" } as const;

export const reasonInWords = (reason: Reason): string => words().reasons[reason.code]?.(reason) ?? "";

function Temperature({ tile, age_s }: { tile: Tile; age_s: number | null }) {
  const { temperature_c } = tile;
  const text = temperature_c === null ? words().noTemperature : words().celsius(temperature_c);
  return (
    <p class={`tile-temperature is-${freshness(age_s)}`}>
      <span class="value">{text}</span> {age_s !== null && <small class="age">{words().age(age_s)}</small>}
    </p>
  );
}

function Drawn({ tile, age_s, number, chosen, choose }: Props) {
  const { need, reasons, state, name, bench } = tile;
  const shown = number === null ? reasons : [];
  return (
    <li class={`tile need-${need}`} data-bench={bench} data-need={need}>
      <div class="tile-head">
        {need >= 2 && (
          <svg class="tile-mark" viewBox="0 0 24 24" aria-hidden="true">
            <path d={MARKS[need]} />
          </svg>
        )}
        <h3>
          {number === null ? (
            <a href={`/room/bench/${bench}`} aria-label={words().open(name)}>
              {name}
            </a>
          ) : (
            number
          )}
        </h3>
        {chosen !== null && (
          <label class="tile-choice">
            <input type="checkbox" checked={chosen} onChange={() => choose(bench)} />
            <span class="unseen">{words().choose(name)}</span>
          </label>
        )}
      </div>
      {need >= 2 && <p class="tile-need">{words().needs[need]}</p>}
      {shown.slice(0, 2).map((reason) => (
        <p key={reason.code} class={`tile-reason need-of-${reason.need}`}>
          {reasonInWords(reason)}
        </p>
      ))}
      {state !== "unknown" && (
        <p class="tile-state">
          <b>{words().states[state]}</b>{" "}
          {state !== "done" && state !== "ready" && <span>{words().waits(tile.waits_s, tile.usual_s)}</span>}
        </p>
      )}
      {state !== "unknown" && state !== "ready" && state !== "done" && <p class="tile-where">{words().where(tile)}</p>}
      <Temperature tile={tile} age_s={age_s} />
      {number === null && tile.group && <p class="tile-group">{tile.group}</p>}
      <div class="tile-progress" aria-hidden="true">
        <span style={{ width: `${Math.round(100 * tile.progress)}%` }} />
      </div>
    </li>
  );
}

const COUNTS: readonly (keyof Props)[] = ["tile", "age_s", "number", "chosen"];

/** Thirty tiles may be drawn ten times a second: only what changed is. */
export class BenchTile extends Component<Props> {
  override shouldComponentUpdate(next: Props): boolean {
    return COUNTS.some((name) => next[name] !== this.props[name]);
  }

  override render(props: Props) {
    return <Drawn {...props} />;
  }
}

export const orderInWords = (act: string, state: string, name: string, why: string | null): string => {
  const told = words().orderNames[act] ?? act;
  return state === "refused" ? words().leftRefused(told, name, said(why ?? "")) : words().leftPending(told, name);
};
