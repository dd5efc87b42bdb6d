/**
 * What a worker has around it, as far as this one uses it (W3C, Service Workers). The compiler's own library for
 * workers can't be loaded beside that for pages.
 */
interface Extended {
  waitUntil(work: Promise<unknown>): void;
}

interface Fetched extends Extended {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}

interface Told extends Extended {
  readonly data: unknown;
}

export interface WorkerScope {
  addEventListener(name: 'install' | 'activate' | 'sync', heard: (event: Extended) => void): void;
  addEventListener(name: 'fetch', heard: (event: Fetched) => void): void;
  addEventListener(name: 'message', heard: (event: Told) => void): void;
  skipWaiting(): Promise<void>;
  readonly clients: { claim(): Promise<void> };
}
