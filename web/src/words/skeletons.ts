// Sentences with values in them, matched by their skeleton: "Add portion #: #. Stir." with # for each value.

export type Skeletons = Readonly<Record<string, string>>;

interface Skeleton {
  /** How a text that fits begins and ends; most texts are told apart by that. */
  first: string;
  last: string;
  /** Made when a text first may fit. */
  pattern?: RegExp;
  skeleton: string;
  /** Too few words of its own to be sure: its values must be known too. */
  vague: boolean;
  told: string;
}

/** A skeleton with fewer letters of its own than this would match sentences that it does not know. */
const VAGUE_LETTERS = 12;
/** More different texts than a page shows; typed or counted ones must not pile up for a whole day. */
const MOST_REMEMBERED = 2000;
const NUMBER = "[-+\u2212]?\\d[\\d.,]*(?:e[-+]?\\d+)?";
const IS_NUMBER = new RegExp(`^${NUMBER}$`);
/** Before a unit stands a number and nothing else. */
const UNIT = /^ ?(?:cm³|°C|%|(?:s|g|K|J|kJ|mol)\b)/;
const SENTENCE = /\S.*?(?:[.?!](?= [A-Z0-9])|$)/gs;

const escaped = (text: string) => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
const letters = (skeleton: string) => skeleton.replace(/[^A-Za-z]/g, "").length;

function prepared([skeleton, told]: [string, string]): Skeleton {
  const parts = skeleton.split("#");
  const [first = ""] = parts;
  return { first, last: parts[parts.length - 1] ?? "", skeleton, vague: letters(skeleton) < VAGUE_LETTERS, told };
}

function compiled(skeleton: string): RegExp {
  const [first = "", ...rest] = skeleton.split("#");
  const source = rest.map((after) => `(${UNIT.test(after) ? NUMBER : ".+?"})${escaped(after)}`).join("");
  return new RegExp(`^${escaped(first)}${source}$`, "s");
}

/** A translator by `skeletons`. In a translation `#` stands for the next value, `#2` for the second one; values are
 * translated themselves. A text that no skeleton matches is tried sentence by sentence; what is not known at all comes
 * back unchanged. */
export function translator(skeletons: Skeletons): (text: string) => string {
  const plain = new Map(Object.entries(skeletons).filter(([skeleton]) => !skeleton.includes("#")));
  let ordered: readonly Skeleton[] | null = null;
  const remembered = new Map<string, string>();

  function translate(text: string): string {
    let told = remembered.get(text);
    if (told === undefined) {
      told = sought(text);
      if (remembered.size >= MOST_REMEMBERED) remembered.clear();
      remembered.set(text, told);
    }
    return told;
  }

  function sought(text: string): string {
    const plainly = text.replace(/\u00a0/g, " ");
    const whole = one(plainly);
    if (whole !== null) return whole;
    const sentences = plainly.match(SENTENCE) ?? [];
    const told = sentences.length > 1 ? sentences.map((sentence) => one(sentence) ?? sentence).join(" ") : plainly;
    return told === plainly ? text : told;
  }

  function one(text: string): string | null {
    const exact = plain.get(text);
    if (exact !== undefined) return exact;
    ordered ??= Object.entries(skeletons)
      .filter(([skeleton]) => skeleton.includes("#"))
      .sort(([some], [other]) => letters(other) - letters(some))
      .map(prepared);
    for (const each of ordered) {
      if (!text.startsWith(each.first) || !text.endsWith(each.last)) continue;
      const values = (each.pattern ??= compiled(each.skeleton)).exec(text)?.slice(1);
      if (values && (!each.vague || values.every(isKnown))) return filled(each.told, values);
    }
    return null;
  }

  function isKnown(value: string): boolean {
    return IS_NUMBER.test(value) || one(value) !== null;
  }

  function filled(told: string, values: readonly string[]): string {
    let next = 0;
    return told.replace(/#(\d?)/g, (_, place: string) => {
      const value = place === "" ? values[next++] : values[Number(place) - 1];
      return translate(value ?? "");
    });
  }
  return translate;
}
