import { describeFindings } from '../findings-in-editor';

describeFindings('the Node extension host');
