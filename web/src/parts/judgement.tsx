// What the students decided by themselves, what the station would have said, and what the difference cost.

import type { Judgement } from "../results";
import { said, words } from "../words";
import { TableFrame } from "./table_frame";

export interface JudgementProps {
  judgement: Judgement;
}

type Portion = Judgement["repeats"][number]["portions"][number];

function Value({ value, write }: { value: number | null; write: (value: number) => string }) {
  if (value !== null) return <td>{write(value)}</td>;
  return (
    <td>
      <span aria-hidden="true">{words.missing}</span>
      <span class="unseen">{words.noReading}</span>
    </td>
  );
}

function Row({ one }: { one: Portion }) {
  const { steps } = words;
  return (
    <tr>
      <th scope="row">{one.portion === 0 ? steps.start : one.portion}</th>
      <Value value={one.own_s} write={steps.seconds} />
      <Value value={one.own_c} write={steps.degrees} />
      <Value value={one.station_s} write={steps.seconds} />
      <Value value={one.station_c} write={steps.degrees} />
    </tr>
  );
}

function Cost({ judgement: { own, station } }: JudgementProps) {
  const { steps } = words;
  return (
    <table class="cost">
      <caption>{steps.cost}</caption>
      <thead>
        <tr>
          <td />
          <th scope="col">{steps.byYou}</th>
          <th scope="col">{steps.byStation}</th>
        </tr>
      </thead>
      <tbody>
        <tr>
          <th scope="row">{steps.time}</th>
          <Value value={own.minutes} write={steps.minutes} />
          <Value value={station.minutes} write={steps.minutes} />
        </tr>
        {(own.end_point_cm3 !== null || station.end_point_cm3 !== null) && (
          <tr>
            <th scope="row">{steps.endPoint}</th>
            <Value value={own.end_point_cm3} write={steps.volume} />
            <Value value={station.end_point_cm3} write={steps.volume} />
          </tr>
        )}
      </tbody>
    </table>
  );
}

export function JudgementPart({ judgement }: JudgementProps) {
  const { steps } = words;
  const { repeats, words: told } = judgement;
  return (
    <div class="judgement">
      <h2>{steps.judgement}</h2>
      <ul class="judgement-words">
        {told.map(said).map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      <TableFrame name={steps.cost}>
        <Cost judgement={judgement} />
      </TableFrame>
      {repeats.map(({ repeat, portions }) => (
        <TableFrame key={repeat} name={steps.repeatTitle(repeat)}>
          <table>
            <caption>{steps.repeatTitle(repeat)}</caption>
            <thead>
              <tr>
                <th scope="col">{steps.portion}</th>
                <th scope="col">{steps.ownWaited}</th>
                <th scope="col">{steps.ownRead}</th>
                <th scope="col">{steps.stationWaited}</th>
                <th scope="col">{steps.stationRead}</th>
              </tr>
            </thead>
            <tbody>
              {portions.map((one) => (
                <Row key={one.portion} one={one} />
              ))}
            </tbody>
          </table>
        </TableFrame>
      ))}
    </div>
  );
}
