import { PICTURE_HEAD_BYTES, PICTURE_TAIL_BYTES, pictureEnds, pictureHead } from '../../scoring/index.ts';
import type { Files } from '../core/ports.ts';
import { PictureProblem } from '../core/session/problem.ts';

/** The browser has taken a blob well within this time after the click. */
const TAKEN_MS = 10_000;

/** Files to and from the user; nothing is sent anywhere. */
export const browserFiles: Files = {
  save: (content, name) => handOver(JSON.stringify(content), name, 'application/json'),

  saveAs: handOver,

  /** The picture's size is read from its first bytes before any of it is unpacked. */
  async openPicture(blob, name) {
    const head = new Uint8Array(await blob.slice(0, PICTURE_HEAD_BYTES).arrayBuffer());
    const { kind } = pictureHead(head, blob.size, name);
    const from = blob.size - Math.min(PICTURE_TAIL_BYTES, blob.size / 2);
    if (!pictureEnds(kind, new Uint8Array(await blob.slice(from).arrayBuffer())))
      throw new PictureProblem(name, 'cut-off');
    const address = URL.createObjectURL(blob.slice(0, blob.size, kind));
    const image = new Image();
    image.src = address;
    try {
      await image.decode();
    } catch {
      URL.revokeObjectURL(address);
      throw new PictureProblem(name, 'cannot-be-shown');
    }
    return { name, blob, address, width_px: image.naturalWidth, height_px: image.naturalHeight };
  },

  closePicture: ({ address }) => URL.revokeObjectURL(address),
};

function handOver(content: string | Uint8Array, name: string, type: string): void {
  const address = URL.createObjectURL(new Blob([content as BlobPart], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), TAKEN_MS);
}
