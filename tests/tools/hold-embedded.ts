import { startEmbedded } from '../../server/database/embedded/start-embedded.ts';

/**
 * A process that does with the embedded PostgreSQL what the service does: start it, say where it is, and
 * stop it when told to. Fault tests run it to have something to kill. Ctrl-C is left unanswered, as in a
 * service that is still draining.
 */
const [dataDir] = process.argv.slice(2);
if (dataDir === undefined) throw new Error('usage: hold-embedded.ts DATA_FOLDER');

process.on('SIGINT', () => undefined);
const server = await startEmbedded({ dataDir, log: (message) => process.send?.({ message }) });
process.on('message', () => {
  void server.stop().then(() => process.disconnect());
});
process.send?.({ ownerUrl: server.ownerUrl, adopted: server.adopted });
