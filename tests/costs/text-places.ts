import { z } from 'zod';
import { memberOf } from '../../shared/member.ts';

/** A schema of the OpenAPI document. */
export type Described = Readonly<Record<string, unknown>>;

const described = z.record(z.string(), z.unknown());
const listed = z.array(described);

/** A place in a body where a text may stand. */
export interface TextPlace {
  readonly path: readonly (string | number)[];
  readonly schema: Described;
}

export interface Operation {
  readonly id: string;
  readonly method: 'POST' | 'PUT' | 'PATCH' | 'DELETE';
  readonly url: string;
  readonly body: Described;
}

const METHODS = { post: 'POST', put: 'PUT', patch: 'PATCH', delete: 'DELETE' } as const;

/** Every operation of the document that takes a body of JSON. */
export function operationsOf(document: unknown): Operation[] {
  const paths = described.parse(memberOf(document, 'paths'));
  return Object.entries(paths).flatMap(([url, item]) =>
    Object.entries(METHODS).flatMap(([key, method]) => {
      const operation = memberOf(item, key);
      const content = memberOf(memberOf(operation, 'requestBody'), 'content');
      const body = described.safeParse(memberOf(memberOf(content, 'application/json'), 'schema'));
      return body.success
        ? [{ id: String(memberOf(operation, 'operationId')), method, url, body: body.data }]
        : [];
    }),
  );
}

/** Reads schemas of one document, whose references lead to its components. */
export class Schemas {
  readonly #named: Described;
  constructor(document: unknown) {
    this.#named = described.parse(memberOf(memberOf(document, 'components'), 'schemas'));
  }

  #at(schema: Described): Described {
    const ref = schema.$ref;
    return typeof ref === 'string'
      ? this.#at(described.parse(this.#named[ref.split('/').at(-1) ?? '']))
      : schema;
  }

  #alternatives(schema: Described): Described[] {
    const own = this.#at(schema);
    const any = listed.safeParse(own.anyOf ?? own.oneOf);
    return any.success ? any.data.flatMap((each) => this.#alternatives(each)) : [own];
  }

  #members(schema: Described): [string, Described][] {
    const members = described.safeParse(schema.properties);
    return members.success
      ? Object.entries(members.data).map(([key, each]) => [key, described.parse(each)])
      : [];
  }

  /** The places of a body where any text may stand; of lists the first item stands for all. */
  textPlaces(schema: Described, path: readonly (string | number)[] = []): TextPlace[] {
    return this.#alternatives(schema).flatMap((each): TextPlace[] => {
      const isText = each.type === 'string' && each.enum === undefined && each.const === undefined;
      if (isText || each.type === undefined) return [{ path, schema: each }];
      if (each.type === 'array') return this.textPlaces(described.parse(each.items ?? {}), [...path, 0]);
      return this.#members(each).flatMap(([key, member]) => this.textPlaces(member, [...path, key]));
    });
  }

  /** A body with all that must be there, and with `text` at its place. */
  bodyWith(schema: Described, path: readonly (string | number)[], text: string): unknown {
    const [head, ...rest] = path;
    const all = this.#alternatives(schema);
    if (head === undefined) return text;
    if (typeof head === 'number') {
      const list = all.find((each) => each.type === 'array') ?? {};
      return [this.bodyWith(described.parse(list.items ?? {}), rest, text)];
    }
    const object = all.find((each) => this.#members(each).some(([key]) => key === head)) ?? {};
    const member = this.#members(object).find(([key]) => key === head)?.[1] ?? {};
    return { ...described.parse(this.#sound(object)), [head]: this.bodyWith(member, rest, text) };
  }

  /** The least that a schema takes. */
  #sound(schema: Described): unknown {
    const [own = {}] = this.#alternatives(schema);
    const words = z.array(z.unknown()).safeParse(own.enum);
    if (words.success) return words.data[0];
    if (own.const !== undefined) return own.const;
    if (own.type === 'object') {
      const needed = z.array(z.string()).catch([]).parse(own.required);
      return Object.fromEntries(
        this.#members(own)
          .filter(([key]) => needed.includes(key))
          .map(([key, member]) => [key, this.#sound(member)]),
      );
    }
    if (own.type === 'array') return [this.#sound(described.parse(own.items ?? {}))];
    if (own.type === 'boolean') return true;
    if (own.type === 'number' || own.type === 'integer') return own.minimum ?? 1;
    return own.format === 'uuid' ? crypto.randomUUID() : '.350 in';
  }
}
