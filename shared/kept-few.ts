/** The values that were asked for last, as many as `most`: the one that was asked for longest ago goes first. */
export class KeptFew<Value> {
  private readonly kept = new Map<string, Value>();

  private readonly most: number;

  constructor(most: number) {
    this.most = most;
  }

  get(key: string): Value | undefined {
    const value = this.kept.get(key);
    if (value !== undefined) {
      this.kept.delete(key);
      this.kept.set(key, value);
    }
    return value;
  }

  /** The value of this key, made where it is not kept. */
  getOr(key: string, make: () => Value): Value {
    const value = this.get(key) ?? make();
    this.set(key, value);
    return value;
  }

  set(key: string, value: Value): void {
    this.kept.delete(key);
    this.kept.set(key, value);
    const [oldest] = this.kept.keys();
    if (this.kept.size > this.most && oldest !== undefined) this.kept.delete(oldest);
  }
}
