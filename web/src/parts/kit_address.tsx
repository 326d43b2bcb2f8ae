// Where other devices find this bench, as a QR code and in digits.

import { type Kit, told, words } from "./kit_looking";

export function KitAddress({ kit }: { kit: Kit }) {
  const [first = ""] = kit.addresses;
  const versions = kit.findings.find(({ name }) => name === "versions");
  return (
    <section class="kit-part kit-address">
      <div>
        <h2>{words().address}</h2>
        <p>{kit.bench}</p>
        <ul>
          {kit.addresses.map((each) => (
            <li key={each}>
              <a href={each}>{each}</a>
            </li>
          ))}
        </ul>
        {versions && (
          <p class="remark">
            {words().versions}: {told(versions.text)}
          </p>
        )}
      </div>
      <img src="/api/kit/address.svg" alt={words().qr(first)} width="160" height="160" />
    </section>
  );
}
