import * as vscode from 'vscode';
import type { IsoMonth } from '../../notation/time/iso-month';
import type { FromMonthPage, ToMonthPage } from '../../pages/month-page-data';
import { editorWords } from '../editor-words';
import type { FeatureContext } from '../feature-context';
import { PagePanel } from '../page/page-panel';
import { readMonthSettings } from '../settings';
import { monthPageData, readMonthPageMessage } from './page-data';

/** The page of the month of one journal. */
export class MonthPagePanel implements vscode.Disposable {
  readonly #page: PagePanel<FromMonthPage>;
  /** The month that it was turned to; without one it shows the month of today. */
  #month: IsoMonth | undefined;

  /** @param journal Id of the journal. */
  constructor(
    context: FeatureContext,
    panel: vscode.WebviewPanel,
    readonly journal: string,
    month: IsoMonth | undefined,
  ) {
    this.#month = month;
    this.#page = new PagePanel<FromMonthPage>(context, panel, journal, {
      script: 'month-page',
      title: vscode.l10n.t('Month'),
      read: readMonthPageMessage,
      show: (open) => {
        const { weekStart } = readMonthSettings(open.uri);
        const data = monthPageData(open, this.#month, editorWords(), vscode.env.language, weekStart);
        return { title: data.title, message: { type: 'data', data } satisfies ToMonthPage };
      },
      answer: (message) => {
        if (message.type === 'print') {
          void vscode.commands.executeCommand('trainingJournal.printMonth', { journal, month: this.#month });
          return;
        }
        this.#month = message.month;
        this.#page.post();
      },
    });
  }

  /** Brings the page to the front, turned to `month` when there is one. */
  reveal(month: IsoMonth | undefined): void {
    this.#month = month ?? this.#month;
    this.#page.reveal();
  }

  refresh(): void {
    this.#page.refresh();
  }

  dispose(): void {
    this.#page.dispose();
  }
}
