// One point of the curve in words.

import type { PortionPoint } from "../chart/frame";
import { fixed, short } from "../format";
import { dress, phrase } from "../words";

/** A time as "3 min 20 s". */
export function clock(time_s: number): string {
  const whole_s = Math.round(time_s);
  return `${Math.floor(whole_s / 60)} min ${whole_s % 60} s`;
}

function valueText({ repeat, temperature_c, ownVolume_cm3 }: PortionPoint["values"][number]): string {
  const temperature = fixed(temperature_c, 2);
  const value = repeat === null ? phrase("page-seeing-mean", { temperature }) : phrase("page-seeing-repeat", { repeat, temperature });
  return ownVolume_cm3 === null ? value : phrase("page-seeing-own-volume", { value, volume: short(ownVolume_cm3) });
}

/** What stands at a portion: its one temperature, or those of all repeats and their mean. */
export function pointText({ portion, volume_cm3, values }: PortionPoint): string {
  const [first] = values;
  const volume = short(volume_cm3);
  const where = portion === 0 ? phrase("page-seeing-at-start", { volume }) : phrase("page-seeing-at-portion", { portion, volume });
  if (first && values.length === 1) return dress(`${where}, ${fixed(first.temperature_c, 2)} °C`);
  return `${where}; ${values.map(valueText).join(", ")}`;
}

/** A moment of one mixing; `since_s` is null before it. */
export function momentOnceText(time_s: number, repeat: number, temperature_c: number, since_s: number | null): string {
  const at = { time: clock(time_s), temperature: fixed(temperature_c, 2), repeat };
  if (since_s === null) return phrase("page-seeing-moment-once-before", at);
  return phrase("page-seeing-moment-once", { ...at, since: Math.round(since_s) });
}
