// The temperature rise (up) against the volume of alkali in the mixture (across): points, both lines and their crossing;
// and the same as a table.

import { AsideAndAdded } from "../../bench/readings";
import { type Box } from "../../chart/frame";
import { Sized, Swatch, repeatClass, repeatMark } from "../../chart/axes";
import { type Crossed, drawnRepeats, volumeChart } from "../../chart/volume";
import { LineName, VolumeDrawing, useName } from "../../chart/volume_figure";
import { decimal, fixed, short } from "../../format";
import type { OwnReading } from "../../live/contract";
import { TableFrame } from "../../page/shared";
import { dress, phrase } from "../../words";
import { type Found, type RatiosView, alkaliOf } from "./view";

export const axisNames = () => ({ chart: phrase("page-ratios-chart"), across: phrase("page-ratios-across"), up: phrase("page-ratios-up") });

const crossed = (found: Found | null): Crossed | null => found && { ...found, temperature_c: found.rise_c };

interface Data {
  view: RatiosView;
  box: Box;
  fine?: boolean;
}

/** Where results are shown, the points are the rises that their lines go through. */
function Drawing({ view, box, fine = false }: Data) {
  const { plan, mean, result, own_reading } = view;
  const { straight_lines: lines = null, heat_balance: heat = null } = result ?? {};
  const points = lines?.rises.map(({ cup, volume_cm3, rise_c }) => ({ portion: cup, volume_cm3, temperature_c: rise_c, count: 1 })) ?? mean;
  const chart = volumeChart({ planned_cm3: plan.mixtures.total_cm3, repeats: [], mean: points, crossing: crossed(lines) }, box);
  const own: OwnReading | null = own_reading;
  return (
    <VolumeDrawing
      chart={{ ...chart, series: [{ repeat: 1, points: chart.mean }] }}
      crossing={crossed(lines)}
      heat={heat}
      own={own}
      box={box}
      id={useName()}
      fine={fine}
      names={axisNames()}
    />
  );
}

function Legend({ view: { result, own_reading } }: { view: RatiosView }) {
  return (
    <ul class="legend">
      <li>
        <Swatch path={repeatMark(1, 12)} class={repeatClass(1)} /> {phrase("page-ratios-point")}
      </li>
      {result?.straight_lines && <LineName name={phrase("page-line-before")} kind="fit fit-before" />}
      {result?.straight_lines && <LineName name={phrase("page-line-after")} kind="fit fit-after" />}
      {result?.heat_balance && (
        <li>
          <Swatch path="M0,-10V10" class="heat-swatch" /> {phrase("page-own-lines-heat")}
        </li>
      )}
      {own_reading?.before && <LineName name={phrase("page-own-lines-legend-before")} kind="own own-before" />}
      {own_reading?.after && <LineName name={phrase("page-own-lines-legend-after")} kind="own own-after" />}
    </ul>
  );
}

const SHAPE = 0.5;
const LETTERS = 48;

/** `width`: of paper / CSS px; null takes the width there is. */
export function RisesFigure({ view, width, large = false }: { view: RatiosView; width: number | null; large?: boolean }) {
  return (
    <>
      {width === null ? (
        <Sized class="drawing" shape={large ? 0.58 : 0.42}>
          {(box) => <Drawing view={view} box={box} fine={large} />}
        </Sized>
      ) : (
        <Drawing view={view} box={{ width, height: Math.round(SHAPE * width), letter: width / LETTERS }} fine={large} />
      )}
      <Legend view={view} />
    </>
  );
}

/** A row for each mixture that was mixed, in their order; the rise is over what both liquids had together. */
export function RisesTable({ view }: { view: RatiosView }) {
  const { plan, mean, repeats } = view;
  if (repeats.length === 0) return null;
  const done = drawnRepeats(repeats);
  const read = (cup: number, portion: number) =>
    done.filter((each) => each.cup === cup).flatMap(({ readings }) => readings.find((one) => one.portion === portion)?.temperature_c ?? []);
  const told = (values: readonly number[]) => (values.length === 0 ? phrase("page-missing") : values.map((value) => dress(fixed(value, 2))).join("; "));
  const cups = [...new Set(done.map(({ cup }) => cup))].sort((one, other) => one - other);
  return (
    <section class="readings">
      <TableFrame name={phrase("page-ratios-table")}>
        <table class="ratios-table">
          <caption>{phrase("page-ratios-table")}</caption>
          <thead>
            <tr>
              {(["alkali", "acid", "share", "start", "highest", "rise"] as const).map((which) => (
                <th scope="col" key={which}>
                  {phrase("page-ratios-columns", { which })}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {cups.map((cup) => {
              const alkali_cm3 = alkaliOf(plan, cup);
              const rise = mean.find(({ portion }) => portion === cup);
              return (
                <tr key={cup}>
                  <th scope="row">{decimal(short(alkali_cm3))}</th>
                  <td>{decimal(short(plan.mixtures.total_cm3 - alkali_cm3))}</td>
                  <td>{decimal(fixed(alkali_cm3 / plan.mixtures.total_cm3, 2))}</td>
                  <td>{told(read(cup, 0))}</td>
                  <td>{told(read(cup, 1))}</td>
                  <td class="mean-cell">{rise ? dress(fixed(rise.temperature_c, 2)) : phrase("page-missing")}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </TableFrame>
      <AsideAndAdded view={view} />
    </section>
  );
}
