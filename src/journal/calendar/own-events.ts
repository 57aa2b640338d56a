/**
 * What the identifier of every event ends with that this program has exported, so that a calendar which hands them
 * back does not make the athlete busy with their own training. The name belongs to nobody (RFC 2606).
 */
const ownEnding = '@markdown-training-journal.invalid';

/** An identifier for an event of this program: `name` must be unlike that of any other, in every journal. */
export function ownUid(name: string): string {
  return `${name}${ownEnding}`;
}

/** Whether the event with this identifier comes from this program. */
export function isOwnUid(uid: string): boolean {
  return uid.endsWith(ownEnding);
}
