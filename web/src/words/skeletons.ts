// Sentences with values in them, matched by their skeleton: "Add portion #: #. Stir." with # for each value.

export type Skeletons = Readonly<Record<string, string>>;

interface Compiled {
  pattern: RegExp;
  told: string;
}

const escaped = (text: string) => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");

/** Letters of a skeleton that are not a value: the more of them, the more is known. */
const known = (skeleton: string) => skeleton.replace(/#/g, "").length;

function compile([skeleton, told]: [string, string]): Compiled {
  return { pattern: new RegExp(`^${skeleton.split("#").map(escaped).join("(.+?)")}$`, "s"), told };
}

/** A translator by `skeletons`. In a translation `#` stands for the next value, `#2` for the second one; values are
 * translated themselves. A text that no skeleton matches comes back unchanged. */
export function translator(skeletons: Skeletons): (text: string) => string {
  const plain = new Map(Object.entries(skeletons).filter(([skeleton]) => !skeleton.includes("#")));
  let patterns: readonly Compiled[] | null = null;

  function translate(text: string): string {
    const exact = plain.get(text);
    if (exact !== undefined) return exact;
    patterns ??= Object.entries(skeletons)
      .filter(([skeleton]) => skeleton.includes("#"))
      .sort(([one], [other]) => known(other) - known(one))
      .map(compile);
    for (const { pattern, told } of patterns) {
      const found = pattern.exec(text);
      if (found) return filled(told, found.slice(1));
    }
    return text;
  }

  function filled(told: string, values: readonly string[]): string {
    let next = 0;
    return told.replace(/#(\d?)/g, (_, place: string) => {
      const value = values[place === "" ? next : Number(place) - 1] ?? "";
      next += 1;
      return translate(value);
    });
  }
  return translate;
}
