// Doubles numbers, late ones first; refuses 13 and dies at 99.
import { parentPort, workerData } from 'node:worker_threads';

parentPort.on('message', ({ id, task }) => {
  if (task === 99) process.exit(3);
  if (task === 13) parentPort.postMessage({ id, error: 'thirteen is refused' });
  else setTimeout(() => parentPort.postMessage({ id, result: task * workerData }), 20 - task);
});
