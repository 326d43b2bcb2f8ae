// What a translation of a topic has to be: the same words and parameters, any text.

/** The shape of `Topic`, whatever its texts are. */
export type Translated<Topic> = Topic extends string
  ? string
  : Topic extends (...given: infer Given) => infer Told
    ? (...given: Given) => Translated<Told>
    : Topic extends object
      ? { [Name in keyof Topic]: Translated<Topic[Name]> }
      : Topic;
