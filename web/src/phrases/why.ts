// Why the first and the last portion change the temperature by different amounts.

import { short, signed } from "../format";
import { phrase } from "../words";

interface Rise {
  portion: number;
  liquid_cm3: number;
  change_c: number;
}

export function moreLiquidText(first: Rise, last: Rise): string {
  return phrase("page-why-more", {
    first: first.portion,
    firstLiquid: short(Math.round(first.liquid_cm3)),
    firstChange: signed(first.change_c, 2),
    last: last.portion,
    lastLiquid: short(Math.round(last.liquid_cm3)),
    lastChange: signed(last.change_c, 2),
  });
}
