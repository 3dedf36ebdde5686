import { describeEveryScreen } from './look-through.ts';

describeEveryScreen([
  { language: 'en', theme: 'light', width: 1366, height: 768 },
  { language: 'es', theme: 'dark', width: 1366, height: 768 },
]);
