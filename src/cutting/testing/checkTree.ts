import type { CutTree, CuttingAnswer, CuttingTask, Pattern } from '../index.ts';

/**
 * Everything that is wrong with an answer, in words; none for a true one. Knows only the rules of the types, and
 * shares nothing with the planner.
 */
export function faultsOf(task: CuttingTask, answer: CuttingAnswer): string[] {
  const patterns = answer.kind === 'plan' ? answer.patterns : answer.best;
  const faults = patterns.flatMap((pattern) => patternFaults(task, pattern));
  const made = task.items.map(() => 0);
  const used = task.sheets.map(() => 0);
  for (const { sheet, times, tree } of patterns) {
    used[sheet] = (used[sheet] ?? 0) + times;
    for (const item of leaves(tree)) made[item] = (made[item] ?? 0) + times;
  }
  task.sheets.forEach(({ count }, sheet) => {
    if (count !== null && used[sheet]! > count)
      faults.push(`sheet ${sheet}: ${used[sheet]} used of ${count}`);
  });
  if (answer.kind === 'plan') {
    task.items.forEach(({ need }, item) => {
      if (made[item]! < need) faults.push(`item ${item}: ${made[item]} made of ${need}`);
    });
    const cost = task.sheets.reduce((sum, sheet, index) => sum + sheet.cost * used[index]!, 0);
    if (cost !== answer.cost) faults.push(`cost ${answer.cost} said, ${cost} counted`);
    if (answer.bound > answer.cost) faults.push(`bound ${answer.bound} over cost ${answer.cost}`);
    const sheets = used.reduce((sum, count) => sum + count, 0);
    if (answer.sheetsBound > sheets) faults.push(`sheetsBound ${answer.sheetsBound} over ${sheets} sheets`);
  } else {
    task.items.forEach(({ need }, item) => {
      const missing = Math.max(0, need - made[item]!);
      if (missing !== answer.missing[item])
        faults.push(`item ${item}: missing ${answer.missing[item]}, not ${missing}`);
    });
    if (answer.missing.every((count) => count === 0)) faults.push('short of nothing');
  }
  return faults;
}

function patternFaults(task: CuttingTask, pattern: Pattern): string[] {
  const sheet = task.sheets[pattern.sheet];
  if (sheet === undefined) return [`no sheet ${pattern.sheet}`];
  const faults: string[] = [];
  if (!Number.isInteger(pattern.times) || pattern.times < 1) faults.push(`times ${pattern.times}`);
  const { tree } = pattern;
  if (tree.width !== sheet.width || tree.height !== sheet.height) faults.push('the tree is not of its sheet');
  const { step, longest, reach } = task.limits;
  const visit = (node: CutTree): void => {
    const shown = `${node.kind} ${node.width} x ${node.height}`;
    if (!(node.width > 0 && node.height > 0)) faults.push(`${shown}: nothing`);
    if (node.kind === 'piece') {
      const item = task.items[node.item];
      if (item === undefined) faults.push(`${shown}: no item ${node.item}`);
      else {
        if (node.turned && !item.turns) faults.push(`${shown}: may not be turned`);
        const [w, h] = node.turned ? [item.height, item.width] : [item.width, item.height];
        if (node.width !== w || node.height !== h) faults.push(`${shown}: item is ${w} x ${h}`);
      }
    }
    if (node.kind === 'cut') {
      if (node.parts.length < 2) faults.push(`${shown}: one part`);
      const [along, across]: ('width' | 'height')[] =
        node.axis === 'width' ? ['width', 'height'] : ['height', 'width'];
      let sum = 0;
      for (const part of node.parts) {
        sum += part[along!];
        if (part[across!] !== node[across!]) faults.push(`${shown}: a part is not as long as its cut`);
      }
      if (sum !== node[along!]) faults.push(`${shown}: parts add up to ${sum}`);
      if (longest !== null && node[across!] > longest) faults.push(`${shown}: cut too long`);
      for (const part of node.parts.slice(0, -1)) {
        if (step !== null && part[along!] % step !== 0)
          faults.push(`${shown}: ${part[along!]} is off the marks`);
        if (reach !== null && part[along!] > reach)
          faults.push(`${shown}: ${part[along!]} is beyond the reach`);
      }
      node.parts.forEach(visit);
    }
  };
  visit(tree);
  return faults;
}

function leaves(tree: CutTree): number[] {
  if (tree.kind === 'piece') return [tree.item];
  return tree.kind === 'cut' ? tree.parts.flatMap(leaves) : [];
}
