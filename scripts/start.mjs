/** `npm start`: makes the clone ready, then serves the app on this machine until Ctrl-C. */
import { parseArgs } from 'node:util';
import { fromRoot } from './lib/root.mjs';
import { runScript, Stop, say } from './lib/say.mjs';
import { setup } from './lib/setup.mjs';
import { listen, staticServer } from './lib/static-server.mjs';

const USUAL_PORT = 4747;

await runScript(async () => {
  const { port: asked, host } = options();
  await setup();
  const server = staticServer(fromRoot('apps/field/dist'));
  const port = await listen(server, { port: asked ?? USUAL_PORT, host, orNext: asked === undefined }).catch(
    (error) => {
      throw new Stop(
        error.code === 'EADDRINUSE'
          ? `Port ${asked} is taken. Give another one: npm start -- --port 5000`
          : `Cannot listen on ${host}, port ${asked ?? USUAL_PORT}: ${error.message}`,
      );
    },
  );
  for (const signal of ['SIGINT', 'SIGTERM']) {
    process.once(signal, () => {
      server.close();
      server.closeAllConnections();
    });
  }
  say(`Standfast is ready: http://${host === '127.0.0.1' ? 'localhost' : host}:${port}/`);
  if (asked === undefined && port !== USUAL_PORT) {
    say(
      `(Port ${USUAL_PORT} was taken. A browser keeps data by address, so cases kept there do not show here.)`,
    );
  }
  say('It opens on the demonstration case. Stop with Ctrl-C.');
});

/** The port asked for by `--port` or PORT, if any, and the address to listen on. */
function options() {
  let given;
  try {
    given = parseArgs({ options: { port: { type: 'string' }, host: { type: 'string' } } }).values;
  } catch (error) {
    throw new Stop(
      `${/** @type {Error} */ (error).message}\nUsage: npm start -- [--port N] [--host ADDRESS]`,
    );
  }
  const text = given.port ?? process.env.PORT;
  const host = given.host ?? '127.0.0.1';
  if (text === undefined || text === '') return { port: undefined, host };
  const port = Number(text);
  if (!Number.isInteger(port) || port < 0 || port > 65535) {
    throw new Stop(`"${text}" is no port: give a whole number from 0 to 65535 (0 for any free one).`);
  }
  return { port, host };
}
