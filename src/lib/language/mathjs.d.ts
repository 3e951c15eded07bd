// mathjs exports its parser's factory without a type; this is what parse.ts uses of it.

export {};

declare module 'mathjs/number' {
  /** The expression parser, over node classes given by the caller. */
  export function createParse(
    dependencies: Readonly<Record<string, unknown>>
  ): (text: string) => object;
}
