import { sendJson } from '../tools/call.ts';
import type { Person, TestService } from '../tools/service.ts';
import type { Command } from './commands.ts';
import { idOf } from './ids.ts';

type Send = (
  method: 'GET' | 'POST' | 'PUT',
  url: string,
  body?: object,
  headers?: Record<string, string>,
) => ReturnType<typeof sendJson>;

/** A call that is entered through the routes, with the ids that its entries have here and in memory. */
export class EnteredCall {
  readonly #send: Send;
  readonly #ids = new Map<string, string>();
  readonly #counts = new Map<'arm' | 'set-up' | 'reading', number>();

  private constructor(send: Send) {
    this.#send = send;
  }

  static async open(service: TestService, person: Person): Promise<EnteredCall> {
    const call = new EnteredCall(async (method, url, body, headers) => {
      const done = await sendJson(service, person.bearer, method, `/api/v1${url}`, body, headers);
      if (done.status >= 300) throw new Error(`${method} ${url}: ${done.status} ${done.text}`);
      return done;
    });
    const { json } = await call.#send('POST', '/calls', {
      goal: 'verify-ratio',
      buildLabel: 'A simulated call',
    });
    call.#ids.set(idOf('call', 1), String(json.id));
    call.#ids.set(idOf('build', 1), String(json.buildId));
    await call.#send('PUT', `/calls/${json.id}/triage`, { engineState: 'apart', contact: 'none' });
    return call;
  }

  #here(id: string): string {
    const known = this.#ids.get(id);
    if (known === undefined) throw new Error(`${id} was not entered`);
    return known;
  }

  get #of(): string {
    return `/builds/${this.#here(idOf('build', 1))}`;
  }

  /** The body with the ids of here. */
  #withIds(body: object): object {
    let text = JSON.stringify(body);
    for (const [memory, here] of this.#ids) text = text.replaceAll(memory, here);
    const read: unknown = JSON.parse(text);
    return typeof read === 'object' && read !== null ? read : {};
  }

  #keep(kind: 'arm' | 'set-up' | 'reading', id: unknown): void {
    const number = (this.#counts.get(kind) ?? 0) + 1;
    this.#counts.set(kind, number);
    this.#ids.set(idOf(kind, number), String(id));
  }

  async #revise(body: object): Promise<void> {
    const { headers } = await this.#send('GET', this.#of);
    await this.#send('PUT', `${this.#of}/spec`, body, { 'if-match': String(headers.etag) });
  }

  async enter(command: Command): Promise<void> {
    const body = this.#withIds(command.body);
    const of = this.#of;
    switch (command.enters) {
      case 'spec':
        return this.#revise(body);
      case 'arm':
        return this.#keep('arm', (await this.#send('POST', `${of}/arms`, body)).json.id);
      case 'set-up':
        return this.#keep('set-up', (await this.#send('POST', `${of}/set-ups`, body)).json.id);
      case 'reading': {
        const at = `${of}/set-ups/${this.#here(command.setUpId)}/readings`;
        return this.#keep('reading', (await this.#send('POST', at, body)).json.id);
      }
      case 'strike': {
        const at = `${of}/readings/${this.#here(command.readingId)}/corrections`;
        return this.#keep('reading', (await this.#send('POST', at, body)).json.id);
      }
      case 'put-right':
        await this.#send('POST', `${of}/set-ups/${this.#here(command.setUpId)}/corrections`, body);
        return;
      case 'place':
        await this.#send('POST', `${of}/placements`, body);
        return;
      case 'answer':
        await this.#send('POST', `${of}/answers`, body);
        return;
      case 'sheet':
        await this.#send('POST', `${of}/sheet`, body);
    }
  }

  /** The assessment as JSON, with the ids that its entries have in memory. */
  async assessment(): Promise<unknown> {
    const { text } = await this.#send('GET', `${this.#of}/assessment?callId=${this.#here(idOf('call', 1))}`);
    let found = text;
    for (const [memory, here] of this.#ids) found = found.replaceAll(here, memory);
    return JSON.parse(found);
  }
}
