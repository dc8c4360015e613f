import type { FinishedProblem } from '../finished/index.ts';
import { assert } from '../problem/index.ts';
import { capital, countedInWords } from './count.ts';
import { lastsWords } from './minutesWords.ts';

/** What of the time of a set is worth knowing before it is begun, and what would help. */
export function timeProblemSentence({ code, numbers }: FinishedProblem): string {
  const { stations = 0, tasks = 0, room = 0, later = 0, idle = 0, work = 0, station = 0, over = 0 } = numbers;
  switch (code) {
    case 'stationsEmpty':
      return `${capital(countedInWords(stations, 'station'))} for ${countedInWords(tasks, 'task')}: some would stand empty, so the time is reckoned for ${tasks}. Have ${tasks} or fewer.`;
    case 'roomToDryShort':
      return `There is room for ${countedInWords(room, 'card')} where cards dry, and so it takes ${lastsWords(later)} longer: helpers hold their cards until there is room. A rack, trays or another table would help.`;
    case 'longWait':
      return `The hands wait longer for glue than they work: ${lastsWords(idle)} against ${lastsWords(work)}. Double-sided tape needs no waiting; or make another set meanwhile.`;
    default:
      assert(code === 'stationWaits', 'Every problem of the time has its sentence', { code });
      return `Station ${station} waits ${lastsWords(over)} over its own glue with every card. Where another station took over there, cards would dry in between: have more stations.`;
  }
}
