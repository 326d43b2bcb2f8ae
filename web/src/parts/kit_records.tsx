// All records of the station to take away, for staff.

import { words } from "./kit_looking";

export function AllRecords() {
  return (
    <section class="kit-part">
      <h2>{words().records}</h2>
      <p>{words().recordsWhy}</p>
      <p>
        <a href="/api/records.zip" download>
          {words().recordsLink}
        </a>
      </p>
    </section>
  );
}
