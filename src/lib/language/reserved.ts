// Names that an expression gives a meaning of its own. A worksheet may define every other name, unit
// names and `e`, `tau` included: a unit is read only after a number, so the two never meet. What a
// line may not define is listed in `text`, where the document sees it too.

/** Values that are always defined; `inf` is a bound of an integral. */
export const constantNames: ReadonlySet<string> = new Set(['pi', 'true', 'false', 'inf']);

/** Operators written as words. */
export const operatorWords: ReadonlySet<string> = new Set(['and', 'or', 'not']);
