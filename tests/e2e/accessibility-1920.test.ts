import { describeEveryScreen } from './look-through.ts';

describeEveryScreen([
  { language: 'en', theme: 'dark', width: 1920, height: 1080 },
  { language: 'es', theme: 'light', width: 1920, height: 1080 },
]);
