// Random numbers for laws that are tried on many cases at once: the same seed gives the same cases on
// every machine. The generator is mulberry32 (T. Ettinger, public domain; from memory): 32 bits of
// state are plenty for picking test cases.

export class Random {
  readonly seed: number;
  private state: number;

  constructor(seed: number) {
    this.seed = seed;
    this.state = seed >>> 0;
  }

  /** In [0, 1). */
  next(): number {
    this.state = (this.state + 0x6d2b79f5) >>> 0;
    let t = this.state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  }

  /** A whole number from 0 to n - 1. */
  below(n: number): number {
    return Math.floor(this.next() * n);
  }

  between(low: number, high: number): number {
    return low + (high - low) * this.next();
  }

  chance(p: number): boolean {
    return this.next() < p;
  }

  pick<T>(from: readonly T[]): T {
    const found = from[this.below(from.length)];
    if (found === undefined) throw new RangeError('nothing to pick from');
    return found;
  }

  shuffled<T>(from: readonly T[]): T[] {
    const order = [...from];
    for (let i = order.length - 1; i > 0; i--) {
      const j = this.below(i + 1);
      const [a, b] = [order[i], order[j]];
      if (a !== undefined && b !== undefined) [order[i], order[j]] = [b, a];
    }
    return order;
  }
}
