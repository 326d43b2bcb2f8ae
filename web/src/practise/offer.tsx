// A station that has no practical under way offers practice: a virtual cup for this device, beside the real one.

import { phrase } from "../words";

export function PractiseOffer() {
  return (
    <section class="practise-offer">
      <h2>{phrase("page-practise-offer")}</h2>
      <p>{phrase("page-practise-offer-more")}</p>
      <a class="button" href="/practise" data-testid="practise">
        {phrase("page-practise-begin")}
      </a>
    </section>
  );
}
