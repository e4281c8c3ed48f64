// Serves a built folder on this machine only. sirv knows the folder's files beforehand, so no address leads out of it.
import { createServer } from 'node:http';

/** Ports tried after one that is taken. */
const MORE_PORTS = 20;

function refuse(response, status, text) {
  response.writeHead(status, { 'Content-Type': 'text/plain; charset=utf-8' });
  response.end(`${text}\n`);
}

/**
 * @param {string} folder what to serve
 * @param {number} port the port wanted; if it is taken the next free one of the twenty after it; 0 for any
 * @returns {Promise<import('node:http').Server>} listening on localhost; rejects where none of the ports can be had
 */
export async function serveFolder(folder, port) {
  const { default: sirv } = await import('sirv');
  const files = sirv(folder, { etag: true, setHeaders: (response) => response.setHeader('Cache-Control', 'no-cache') });
  const server = createServer((request, response) => {
    try {
      files(request, response, () => refuse(response, 404, 'There is no such page here.'));
    } catch {
      // An address no one can read is the asker's mistake and must not end the server.
      refuse(response, 400, 'This address cannot be read.');
    }
  });
  let tried = 0;
  await new Promise((resolve, reject) => {
    server.on('error', (error) => {
      if (error.code !== 'EADDRINUSE' || port === 0 || tried >= MORE_PORTS) return reject(error);
      tried += 1;
      return server.listen(port + tried, 'localhost');
    });
    server.on('listening', resolve);
    server.listen(port, 'localhost');
  });
  return server;
}
