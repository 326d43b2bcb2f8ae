// All benches' results in a table, the class's last.

import { TableFrame } from "../parts/table_frame";
import { roomWords as words } from "../words/room_topic";
import type { ClassResult, Quantity } from "./contract";

function cell(quantity: Quantity, bench: string): string | null {
  const found = quantity.values.find((each) => each.bench === bench);
  return found ? words().value(found.value, found.u) : null;
}

export function ClassTable({ result }: { result: ClassResult }) {
  const { benches, quantities } = result;
  return (
    <section class="readings class-table">
      <TableFrame name={words().tableTitle}>
        <table>
          <caption>{words().tableTitle}</caption>
          <thead>
            <tr>
              <th scope="col">{words().bench}</th>
              <th scope="col">{words().repeats}</th>
              {quantities.map(({ quantity, method }) => (
                <th scope="col" key={`${quantity} ${method}`}>
                  {words().quantities[quantity]} / {words().inUnit(quantity)}
                  <br />
                  <small>{words().methods[method]}</small>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {benches.map((each) => (
              <tr key={each.bench}>
                <th scope="row">{each.name}</th>
                <td>{each.repeats}</td>
                {quantities.map((quantity) => (
                  <td key={`${quantity.quantity} ${quantity.method}`}>
                    {each.pooled ? (cell(quantity, each.bench) ?? words().noValue) : words().notPooled}
                  </td>
                ))}
              </tr>
            ))}
            <tr class="class-mean">
              <th scope="row">{words().classMean}</th>
              <td>{benches.reduce((sum, { repeats }) => sum + repeats, 0)}</td>
              {quantities.map(({ quantity, method, pooled }) => (
                <td key={`${quantity} ${method}`}>{pooled ? words().value(pooled.mean, pooled.u) : words().noValue}</td>
              ))}
            </tr>
          </tbody>
        </table>
      </TableFrame>
    </section>
  );
}
