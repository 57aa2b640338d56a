/** Put in by the build: other for each version of the sources that read notes. */
declare const READER_FINGERPRINT: string;

/** Tells the notes that this version of the extension kept from those of any other. */
export const readerFingerprint = READER_FINGERPRINT;
