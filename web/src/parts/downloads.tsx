// What a group can take away, as links to files.

import { words } from "../words";

type FileName = keyof typeof words.record.files;

const FILES: readonly (readonly [FileName, string, string])[] = [
  ["sheet", "/api/record.xlsx", ".xlsx"],
  ["readings", "/api/readings.csv", ".csv"],
  ["record", "/api/record.csv", ".csv"],
  ["readingsComma", "/api/readings.csv?decimal=comma", ".csv"],
  ["recordComma", "/api/record.csv?decimal=comma", ".csv"],
  ["journal", "/api/journal.jsonl", ".jsonl"],
];

export function Downloads() {
  return (
    <section class="downloads">
      <h2>{words.record.downloads}</h2>
      <ul>
        {FILES.map(([name, path, ending]) => (
          <li key={name}>
            <a href={path} download>
              {words.record.files[name]} <small>{ending}</small>
            </a>
          </li>
        ))}
      </ul>
      <p class="remark">{words.record.downloadsHint}</p>
    </section>
  );
}
