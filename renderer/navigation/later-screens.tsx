/** Every screen but the first. */
import { BenchScreen } from '../screens/bench/bench-screen.tsx';
import { TagScreen } from '../screens/bench/tag-screen.tsx';
import { CorrectionsScreen } from '../screens/corrections/corrections-screen.tsx';
import { CountScreen } from '../screens/desk/count-screen.tsx';
import { CustodyScreen } from '../screens/desk/custody-screen.tsx';
import { DeskScreen } from '../screens/desk/desk-screen.tsx';
import { KitsScreen } from '../screens/desk/kits-screen.tsx';
import { DeviceScreen } from '../screens/device/device-screen.tsx';
import { NewDeviceScreen } from '../screens/device/new-device-screen.tsx';
import { HeldDeviceScreen } from '../screens/held/held-device-screen.tsx';
import { HeldScreen } from '../screens/held/held-screen.tsx';
import { ReturnBatchScreen } from '../screens/held/return-batch-screen.tsx';
import { ReturnsScreen } from '../screens/held/returns-screen.tsx';
import { CaseScreen } from '../screens/identity/case-screen.tsx';
import { WhoScreen } from '../screens/identity/who-screen.tsx';
import { InsightScreen } from '../screens/insight/insight-screen.tsx';
import { LifelineScreen } from '../screens/lifeline/lifeline-screen.tsx';
import { LimitsScreen } from '../screens/limits/limits-screen.tsx';
import { MarkingsScreen } from '../screens/markings/markings-screen.tsx';
import { RelabelScreen } from '../screens/markings/relabel-screen.tsx';
import { NewNoticeScreen } from '../screens/notices/new-notice-screen.tsx';
import { NoticeScreen } from '../screens/notices/notice-screen.tsx';
import { NoticesScreen } from '../screens/notices/notices-screen.tsx';
import { PersonScreen } from '../screens/people/person-screen.tsx';
import { RecordScreen } from '../screens/records/record-screen.tsx';
import { RecordsScreen } from '../screens/records/records-screen.tsx';
import { RegisterScreen } from '../screens/register/register-screen.tsx';
import { ReturnsPlanScreen } from '../screens/returns-plan/returns-plan-screen.tsx';
import { ReinspectionsScreen } from '../screens/schedule/reinspections-screen.tsx';
import { ScheduleScreen } from '../screens/schedule/schedule-screen.tsx';
import { WeekScreen } from '../screens/schedule/week-screen.tsx';
import { SetupScreen } from '../screens/setup/setup-screen.tsx';
import type { LaterRoute } from './route.ts';

export const LaterScreen = ({ route }: { readonly route: LaterRoute }) => {
  switch (route.screen) {
    case 'register':
      return <RegisterScreen filter={route.filter} />;
    case 'new-device':
      return (
        <NewDeviceScreen key={`${route.code}/${route.benchId}`} code={route.code} benchId={route.benchId} />
      );
    case 'device':
      return <DeviceScreen key={route.benchId} benchId={route.benchId} />;
    case 'lifeline':
      return <LifelineScreen key={route.benchId} benchId={route.benchId} />;
    case 'bench':
      return <BenchScreen key={route.inspection} inspection={route.inspection} />;
    case 'tag':
      return <TagScreen key={`${route.benchId}/${route.kind}`} benchId={route.benchId} kind={route.kind} />;
    case 'who':
      return route.identityCase === undefined ? (
        <WhoScreen />
      ) : (
        <CaseScreen key={route.identityCase} identityCase={route.identityCase} />
      );
    case 'relabel':
      return <RelabelScreen key={route.benchId} benchId={route.benchId} />;
    case 'held':
      return route.benchId === undefined ? (
        <HeldScreen />
      ) : (
        <HeldDeviceScreen key={route.benchId} benchId={route.benchId} />
      );
    case 'returns':
      return route.batch === undefined ? (
        <ReturnsScreen />
      ) : (
        <ReturnBatchScreen key={route.batch} number={route.batch} />
      );
    case 'returns-plan':
      return <ReturnsPlanScreen page={route.page} />;
    case 'desk':
      return <DeskScreen returning={route.benchId} />;
    case 'custody':
      return <CustodyScreen />;
    case 'kits':
      return <KitsScreen />;
    case 'count':
      return <CountScreen key={route.place} place={route.place} />;
    case 'notices':
      return <NoticesScreen />;
    case 'new-notice':
      return <NewNoticeScreen />;
    case 'notice':
      return <NoticeScreen key={route.notice} notice={route.notice} />;
    case 'markings':
      return <MarkingsScreen />;
    case 'corrections':
      return <CorrectionsScreen key={route.benchId} benchId={route.benchId} />;
    case 'person':
      return <PersonScreen key={route.personId} personId={route.personId} />;
    case 'schedule':
      return route.week === undefined ? (
        <ScheduleScreen />
      ) : (
        <WeekScreen key={route.week} week={route.week} />
      );
    case 'reinspections':
      return <ReinspectionsScreen />;
    case 'records':
      return <RecordsScreen key={route.benchId} benchId={route.benchId} />;
    case 'record':
      return <RecordScreen key={route.inspection} inspection={route.inspection} />;
    case 'insight':
      return <InsightScreen />;
    case 'limits':
      return <LimitsScreen />;
    case 'setup':
      return <SetupScreen key={route.panel} panel={route.panel} />;
  }
};
