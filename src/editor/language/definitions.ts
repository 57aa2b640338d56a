import * as vscode from 'vscode';
import { type NamedPlace, nameAt, namedPlaces } from '../../journal/named-places';
import type { SourceRange } from '../../notation/source-range';
import { offsetInNote, rangeInNote } from '../document-ranges';
import type { FeatureContext } from '../feature-context';
import type { OpenJournal } from '../open-journal';
import { noteSelector } from './note-selector';

/** What belongs to a place: a goal with all below it, otherwise the tag's line. */
function wholeRange({ entry }: NamedPlace): SourceRange {
  return entry.tag === 'goal' ? entry.scope : entry.range;
}

async function nameUnder(
  { journals }: FeatureContext,
  document: vscode.TextDocument,
  position: vscode.Position,
  token: vscode.CancellationToken,
) {
  await journals.ready;
  const found = token.isCancellationRequested ? undefined : journals.noteOf(document);
  if (!found) return undefined;
  const named = nameAt(found.journal.journal, found.note, offsetInNote(found.note, position));
  return named && { journal: found.journal, named };
}

function locationOf(journal: OpenJournal, place: NamedPlace): vscode.Location {
  return new vscode.Location(journal.uriOf(place.note.path), rangeInNote(place.note, place.name.range));
}

function definitionProvider(context: FeatureContext): vscode.DefinitionProvider {
  return {
    async provideDefinition(document, position, token): Promise<vscode.LocationLink[] | undefined> {
      const under = await nameUnder(context, document, position, token);
      if (!under) return undefined;
      const { journal, named } = under;
      const origin = rangeInNote(named.note, named.name.range);
      return namedPlaces(journal.journal, named.thing)
        .filter((place) => place.name.declares)
        .map((place) => ({
          originSelectionRange: origin,
          targetUri: journal.uriOf(place.note.path),
          targetRange: rangeInNote(place.note, wholeRange(place)),
          targetSelectionRange: rangeInNote(place.note, place.name.range),
        }));
    },
  };
}

function referenceProvider(context: FeatureContext): vscode.ReferenceProvider {
  return {
    async provideReferences(document, position, options, token): Promise<vscode.Location[] | undefined> {
      const under = await nameUnder(context, document, position, token);
      if (!under) return undefined;
      const { journal, named } = under;
      return namedPlaces(journal.journal, named.thing)
        .filter((place) => options.includeDeclaration || !place.name.declares)
        .map((place) => locationOf(journal, place));
    },
  };
}

/** Going from a goal's or a routine's name to its line, and from there to every place that names it. */
export function registerDefinitions(context: FeatureContext): vscode.Disposable {
  return vscode.Disposable.from(
    vscode.languages.registerDefinitionProvider(noteSelector, definitionProvider(context)),
    vscode.languages.registerReferenceProvider(noteSelector, referenceProvider(context)),
  );
}
