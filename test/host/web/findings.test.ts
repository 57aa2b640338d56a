import { describeFindings } from '../findings-in-editor';

describeFindings("the browser's worker");
