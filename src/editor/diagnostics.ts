import * as vscode from 'vscode';
import type { NotePath } from '../journal/note';
import type { Finding, Severity } from '../training/finding';
import { PublishedFindings } from '../training/published-findings';
import { weeksAround } from '../training/weeks-around';
import { rangeInNote } from './document-ranges';
import { guidePage } from './guide';
import type { OpenJournal, OpenJournals } from './open-journal';
import { say } from './sentences';

/** A note with more findings than this has something else wrong with it; the rest is counted in the last one. */
const mostPerNote = 50;

const severities: Readonly<Record<Severity, vscode.DiagnosticSeverity>> = {
  error: vscode.DiagnosticSeverity.Error,
  warning: vscode.DiagnosticSeverity.Warning,
  information: vscode.DiagnosticSeverity.Information,
};

/** The source that the editor shows beside each finding. */
export const findingSource = 'training';

function diagnosticOf(journal: OpenJournal, finding: Finding): vscode.Diagnostic | undefined {
  const note = journal.journal.file(finding.note);
  if (!note) return undefined;
  const range = rangeInNote(note, finding.range);
  const diagnostic = new vscode.Diagnostic(range, say(finding.message), severities[finding.severity]);
  diagnostic.source = findingSource;
  diagnostic.code = { value: finding.code, target: guidePage(finding.code) };
  diagnostic.relatedInformation = finding.related.flatMap((place) => {
    const other = journal.journal.file(place.note);
    if (!other) return [];
    const location = new vscode.Location(journal.uriOf(place.note), rangeInNote(other, place.range));
    return [new vscode.DiagnosticRelatedInformation(location, say(place.message))];
  });
  return diagnostic;
}

/** A finding together with what the editor shows of it. */
export interface ShownFinding {
  readonly finding: Finding;
  readonly diagnostic: vscode.Diagnostic;
}

/**
 * Publishes findings as the journals change: for the weeks around today, and for open notes. One call to the editor
 * a note, and only for notes whose findings changed.
 */
export class Findings implements vscode.Disposable {
  readonly #collection = vscode.languages.createDiagnosticCollection('trainingJournal');
  readonly #published = new Map<OpenJournal, PublishedFindings>();
  readonly #shown = new Map<string, readonly ShownFinding[]>();
  readonly #changed = new vscode.EventEmitter<void>();
  readonly #subscriptions: vscode.Disposable[] = [this.#collection, this.#changed];
  readonly onDidChange = this.#changed.event;

  constructor(private readonly journals: OpenJournals) {
    this.#subscriptions.push(
      journals.onDidChange((changes) => {
        for (const { journal, kind, notes } of changes) {
          if (kind === 'removed') this.#forget(journal);
          else this.#refresh(journal, notes);
        }
      }),
      vscode.window.tabGroups.onDidChangeTabs(() => this.refreshAll()),
    );
    this.refreshAll();
  }

  /** Checks everything again, as on the change of a day. */
  refreshAll(): void {
    for (const journal of this.journals.all()) this.#refresh(journal, new Set());
  }

  /** What is shown in a note, with the findings behind it. */
  shownIn(uri: vscode.Uri): readonly ShownFinding[] {
    return this.#shown.get(uri.toString()) ?? [];
  }

  /** Findings of a journal that are shown, worst first. */
  of(journal: OpenJournal): readonly Finding[] {
    return this.#published.get(journal)?.all ?? [];
  }

  dispose(): void {
    for (const subscription of this.#subscriptions) subscription.dispose();
  }

  #refresh(journal: OpenJournal, changed: ReadonlySet<NotePath>): void {
    if (!journal.settings.findings.enabled) {
      this.#forget(journal);
      return;
    }
    const published = this.#published.get(journal) ?? new PublishedFindings(journal.journal);
    this.#published.set(journal, published);
    const touched = published.refresh(
      {
        today: journal.today(),
        zone: journal.zone(),
        acceptedChance: journal.settings.recoveryChance,
        weeks: weeksAround(journal.today(), journal.settings.findings),
        openNotes: this.#openNotes(journal),
      },
      changed,
    );
    // A changed note is published again though its findings read the same: their lines may have moved.
    for (const path of new Set([...touched, ...changed])) this.#publish(journal, path, published.of(path));
    this.#changed.fire();
  }

  #openNotes(journal: OpenJournal): ReadonlySet<NotePath> {
    const open = new Set<NotePath>();
    for (const tab of vscode.window.tabGroups.all.flatMap((group) => group.tabs)) {
      if (!(tab.input instanceof vscode.TabInputText)) continue;
      const found = this.journals.find(tab.input.uri);
      if (found?.journal === journal) open.add(found.path);
    }
    return open;
  }

  /** Whether another journal, in whose folder the note lies now, has its findings published already. */
  #isTakenOver(journal: OpenJournal, uri: vscode.Uri): boolean {
    const owner = this.journals.find(uri)?.journal;
    return owner !== undefined && owner !== journal && this.#published.has(owner);
  }

  #publish(journal: OpenJournal, path: NotePath, findings: readonly Finding[]): void {
    const uri = journal.uriOf(path);
    if (this.#isTakenOver(journal, uri)) return;
    const shown = findings.slice(0, mostPerNote).flatMap((finding) => {
      const diagnostic = diagnosticOf(journal, finding);
      return diagnostic ? [{ finding, diagnostic }] : [];
    });
    const last = shown.at(-1);
    if (last && findings.length > mostPerNote)
      last.diagnostic.message += ` ${vscode.l10n.t('({0} more in this note.)', findings.length - mostPerNote)}`;
    if (shown.length === 0) {
      this.#shown.delete(uri.toString());
      this.#collection.delete(uri);
    } else {
      this.#shown.set(uri.toString(), shown);
      this.#collection.set(
        uri,
        shown.map((one) => one.diagnostic),
      );
    }
  }

  #forget(journal: OpenJournal): void {
    const published = this.#published.get(journal);
    this.#published.delete(journal);
    for (const note of new Set(published?.all.map((finding) => finding.note))) {
      const uri = journal.uriOf(note);
      if (this.#isTakenOver(journal, uri)) continue;
      this.#shown.delete(uri.toString());
      this.#collection.delete(uri);
    }
    this.#changed.fire();
  }
}
