import type { ChosenFile } from '../../core/chosen-file.ts';
import type { ChosenFiles } from '../../core/ports.ts';

/** A folder's own files, and the names of the folders in it, out of a picker that hands over everything below. */
export function ofFolder(files: readonly File[]): ChosenFiles {
  const own: File[] = [];
  const folders = new Set<string>();
  for (const file of files) {
    const [, ...below] = file.webkitRelativePath.split('/');
    if (below.length > 1) folders.add(below[0]!);
    else own.push(file);
  }
  return { files: own, folders: [...folders] };
}

/** What was dropped: files, and the own files of folders. Has to be begun while the drop is being handled. */
export async function dropped(items: DataTransferItemList): Promise<ChosenFiles> {
  const entries = [...items].map((item) => item.webkitGetAsEntry()).filter((entry) => entry !== null);
  const files: ChosenFile[] = [];
  const folders: string[] = [];
  const lost: string[] = [];
  for (const entry of entries) {
    if (isFile(entry)) files.push(await fileOf(entry));
    else if (isFolder(entry)) {
      try {
        for (const inside of await entriesOf(entry)) {
          if (isFile(inside)) files.push(await fileOf(inside));
          else folders.push(inside.name);
        }
      } catch {
        lost.push(entry.name);
      }
    }
  }
  return { files, folders, lost };
}

/** Whether a drop is a class's: more than one thing, or a folder. */
export function isClass(items: DataTransferItemList): boolean {
  const entries = [...items].map((item) => item.webkitGetAsEntry()).filter((entry) => entry !== null);
  return entries.length > 1 || entries.some((entry) => entry.isDirectory);
}

const isFile = (entry: FileSystemEntry): entry is FileSystemFileEntry => entry.isFile;
const isFolder = (entry: FileSystemEntry): entry is FileSystemDirectoryEntry => entry.isDirectory;

/** One that was taken away meanwhile says so when it is read, like any other that cannot be. */
function fileOf(entry: FileSystemFileEntry): Promise<ChosenFile> {
  return new Promise((resolve) =>
    entry.file(resolve, (error) =>
      resolve({ name: entry.name, size: 0, lastModified: 0, arrayBuffer: () => Promise.reject(error) }),
    ),
  );
}

/** The reader hands a folder over in pieces; an empty one is the end. */
async function entriesOf(folder: FileSystemDirectoryEntry): Promise<FileSystemEntry[]> {
  const reader = folder.createReader();
  const all: FileSystemEntry[] = [];
  for (;;) {
    const some = await new Promise<FileSystemEntry[]>((resolve, reject) => reader.readEntries(resolve, reject));
    if (some.length === 0) return all;
    all.push(...some);
  }
}
