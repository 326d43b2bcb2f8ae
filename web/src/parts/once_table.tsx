// The table of a practical that mixes once: the numbers behind the figure.

import { onceTable } from "../once_table";
import type { OnceView } from "../plan";
import { words } from "../words";
import { AsideAndAdded } from "./readings";
import { TableFrame } from "./table_frame";

function Cell({ value_c, mean = false }: { value_c: number | null; mean?: boolean }) {
  const name = mean ? "mean-cell" : undefined;
  if (value_c !== null) return <td class={name}>{words.reading(value_c)}</td>;
  return (
    <td class={name}>
      <span aria-hidden="true">{words.missing}</span>
      <span class="unseen">{words.noReading}</span>
    </td>
  );
}

export function OnceNumbers({ view }: { view: OnceView }) {
  const table = onceTable(view.repeats, view.mean, view.result);
  const averaged = table.repeats.length > 1;
  if (view.repeats.length === 0) return null;
  return (
    <section class="readings">
      {table.rows.length > 0 && (
        <TableFrame name={words.onceTable}>
          <table class="once-table">
            <caption>{words.onceTable}</caption>
            <thead>
              <tr>
                <th scope="col">{words.quantity}</th>
                {table.repeats.map((repeat) => (
                  <th scope="col" key={repeat}>
                    {words.repeatName(repeat)}
                  </th>
                ))}
                {averaged && <th scope="col">{words.mean}</th>}
              </tr>
            </thead>
            <tbody>
              {table.rows.map((row) => (
                <tr key={row.quantity}>
                  <th scope="row">{row.quantity}</th>
                  {row.values_c.map((value_c, index) => (
                    <Cell key={table.repeats[index]} value_c={value_c} />
                  ))}
                  {averaged && (row.mean_c === null ? <td /> : <Cell value_c={row.mean_c} mean />)}
                </tr>
              ))}
            </tbody>
          </table>
        </TableFrame>
      )}
      <AsideAndAdded view={view} />
    </section>
  );
}
