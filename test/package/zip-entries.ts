/** One file of a zip archive: its path, and its size in bytes before packing. */
export interface ZipEntry {
  readonly path: string;
  readonly bytes: number;
}

const endOfDirectory = 0x06054b50;
const directoryEntry = 0x02014b50;

/**
 * The files of a zip archive, read from its central directory (APPNOTE.TXT 6.3.10, 4.3.12 and 4.3.16). Archives over
 * 4 GB or with more than 65,535 files are not read.
 * @throws when it is not a zip archive
 */
export function zipEntries(archive: Buffer): readonly ZipEntry[] {
  // The end record is 22 bytes and a comment of at most 65,535.
  let end = archive.length - 22;
  while (end >= 0 && archive.readUInt32LE(end) !== endOfDirectory) end -= 1;
  if (end < 0) throw new Error('Not a zip archive: it has no end record.');
  const count = archive.readUInt16LE(end + 10);
  let at = archive.readUInt32LE(end + 16);
  const entries: ZipEntry[] = [];
  for (let index = 0; index < count; index += 1) {
    if (archive.readUInt32LE(at) !== directoryEntry)
      throw new Error('Not a zip archive: its directory is torn.');
    const nameLength = archive.readUInt16LE(at + 28);
    const path = archive.toString('utf8', at + 46, at + 46 + nameLength);
    entries.push({ path, bytes: archive.readUInt32LE(at + 24) });
    at += 46 + nameLength + archive.readUInt16LE(at + 30) + archive.readUInt16LE(at + 32);
  }
  return entries;
}
