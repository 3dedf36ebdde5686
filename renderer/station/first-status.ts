/** What the window asks the station first, on its way before the rest of the page is read. */
import { call } from './client.ts';

export const firstStatus = call('station.status', {});
