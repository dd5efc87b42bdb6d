import { connect } from 'node:net';

/** Sends bytes as they are, which no client library would, and answers what came back until the end. */
export function sendRaw(
  base: string,
  text: string,
): Promise<{ statusCode: number; headers: Record<string, string>; body: string }> {
  const { hostname, port } = new URL(base);
  return new Promise((resolve, reject) => {
    const socket = connect(Number(port), hostname, () => socket.write(text));
    let got = '';
    socket.setEncoding('utf8');
    socket.on('data', (part: string) => {
      got += part;
    });
    // A server may cut off what it refuses to read on; what it said before counts.
    socket.on('error', (error) => (got === '' ? reject(error) : undefined));
    socket.on('close', () => {
      const [head = '', ...rest] = got.split('\r\n\r\n');
      const [first = '', ...lines] = head.split('\r\n');
      resolve({
        statusCode: Number(first.split(' ')[1]),
        headers: Object.fromEntries(
          lines.map((line) => {
            const colon = line.indexOf(':');
            return [line.slice(0, colon).toLowerCase(), line.slice(colon + 1).trim()];
          }),
        ),
        body: rest.join('\r\n\r\n'),
      });
    });
  });
}
