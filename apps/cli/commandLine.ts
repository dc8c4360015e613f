import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import type { KindnessGoal } from '../../src/planning/index.ts';
import type { CheckOptions } from './commands/check.ts';
import type { DocketOptions } from './commands/docket.ts';
import type { DrawOptions } from './commands/draw.ts';
import type { EnoughOptions } from './commands/enough.ts';
import type { GuideOptions } from './commands/guide.ts';
import type { KitsOptions } from './commands/kits.ts';
import type { NewOptions } from './commands/new.ts';
import type { OutlineOptions } from './commands/outline.ts';
import type { PlanOptions } from './commands/plan.ts';
import type { RecastOptions } from './commands/recast.ts';
import type { RecutOptions } from './commands/recut.ts';
import type { RestockOptions } from './commands/restock.ts';
import type { RibbonOptions } from './commands/ribbon.ts';
import type { SuitOptions } from './commands/suit.ts';
import { cannot, done, type Outcome, wrongUsage } from './outcome.ts';
import { type World, WorldProblem } from './world.ts';

/**
 * From arguments to exit status, over the library. Commands are loaded only when they are called, so that help
 * comes at once.
 */
export async function runCommandLine(args: readonly string[], world: World): Promise<Outcome> {
  let outcome: Outcome = done;
  const program = describe(world, (answer) => {
    outcome = answer;
  });
  try {
    if (args.length === 0) {
      program.outputHelp({ error: true });
      return wrongUsage;
    }
    await program.parseAsync([...args], { from: 'user' });
    return outcome;
  } catch (problem) {
    if (problem instanceof CommanderError) return problem.exitCode === 0 ? done : wrongUsage;
    if (problem instanceof WorldProblem) {
      world.err(`${problem.message}\n`);
      return cannot;
    }
    throw problem;
  }
}

function describe(world: World, answer: (outcome: Outcome) => void): Command {
  const program = new Command('cardwright')
    .description(
      'Works out a set of handmade cards before paper is cut: exact pieces, a proved cutting plan, a guide to print.',
    )
    .version(version, '--version', 'say which version this is')
    .helpOption('-h, --help', 'say how it is used')
    .helpCommand('help [command]', 'say how a command is used')
    .exitOverride()
    .configureOutput({ writeOut: world.out, writeErr: world.err })
    .showSuggestionAfterError()
    .addHelpText(
      'after',
      example(
        ['cardwright new birthday.card.json', 'a layout to start from'],
        ['cardwright check birthday.card.json', 'what would spoil the set'],
        ['cardwright plan birthday.card.json', 'how to cut it'],
        ['cardwright enough birthday.card.json', 'how many cards the papers are enough for'],
        ['cardwright guide birthday.card.json -o birthday.pdf', 'the guide to print'],
      ),
    );

  const command = (words: string, says: string, ...examples: readonly [string, string][]) =>
    program
      .command(words)
      .description(says)
      .addHelpText('after', example(...examples));
  const json = () => new Option('--json', 'as JSON, to be read by programs');
  const trimmer = () =>
    new Option(
      '--trimmer <file>',
      'plan for this trimmer (a *.trimmer.json file): what it can do and how far its ruler is off',
    );
  const risk = () =>
    new Option(
      '--risk <chance>',
      'how often a set may have a torn edge that fails, as 1/20 or 5%; without it 1/20',
    ).argParser(riskIn);
  const post = () =>
    new Option(
      '--post <file>',
      'a post table of your own (a *.post.json file), instead of those that are known; sizes and limits, no prices',
    );
  const spares = () =>
    new Option('--with-spares', 'make all the spares that come for nothing from the same sheets');
  const prefer = () =>
    new Option(
      '--prefer <goals>',
      `what makes a plan of least cost kind to cut, what counts most first, with commas between; without it ${goals.join(', ')}`,
    ).argParser(goalsIn);
  const several = (flags: string, says: string) =>
    new Option(flags, says)
      .argParser((text: string, before: readonly string[] = []) => [...before, text])
      .default([], 'none');
  const output = (what: string) =>
    new Option('-o, --output <file>', `${what}; - is standard output`).makeOptionMandatory();
  const layoutFile = ['<file>', 'the layout (*.card.json); - is standard input'] as const;

  command('new', 'Write a small layout to start from.', [
    'cardwright new birthday.card.json --units mm',
    'a metric layout of ten cards',
  ])
    .argument('<file>', 'where to write it; a file that is there already is left alone; - is standard output')
    .addOption(new Option('--units <units>', 'inch or metric').choices(['in', 'mm']).default('in'))
    .addOption(new Option('--title <text>', 'what the set is called'))
    .action(async (file: string, options: NewOptions) => {
      const { newLayout } = await import('./commands/new.ts');
      answer(await newLayout(file, options, world));
    });

  command('check', 'Find what would spoil the set, before paper is cut.', [
    'cardwright check birthday.card.json',
    'errors and cautions, in plain words',
  ])
    .argument(...layoutFile)
    .addOption(trimmer())
    .addOption(risk())
    .addOption(post())
    .addOption(json())
    .action(async (file: string, options: CheckOptions) => {
      const { check } = await import('./commands/check.ts');
      answer(await check(file, options, world));
    });

  command('plan', 'Plan the cutting of the whole set: which sheets, which cuts, in which order.', [
    'cardwright plan birthday.card.json --trimmer mine.trimmer.json',
    'the steps for my own trimmer',
  ])
    .argument(...layoutFile)
    .addOption(trimmer())
    .addOption(prefer())
    .addOption(spares())
    .addOption(json())
    .action(async (file: string, options: PlanOptions) => {
      const { plan } = await import('./commands/plan.ts');
      answer(await plan(file, options, world));
    });

  command(
    'docket',
    'Report on the finished cards and their making: what shows, what tears may do, how thick and heavy, which envelope, which post, how long it takes.',
    ['cardwright docket birthday.card.json', 'all that is known of the cards once they are made'],
  )
    .argument(...layoutFile)
    .addOption(trimmer())
    .addOption(risk())
    .addOption(post())
    .addOption(
      new Option(
        '--time-chart <file>',
        'also write the time of the set, drawn: its stations, or task after task (SVG; - for standard output instead of the report)',
      ),
    )
    .addOption(json())
    .action(async (file: string, options: DocketOptions) => {
      const { docket } = await import('./commands/docket.ts');
      answer(await docket(file, options, world));
    });

  command(
    'enough',
    'Say how many cards these papers are enough for, and which small changes of size gain from them.',
    [
      'cardwright enough birthday.card.json',
      'the largest set, what runs out, and what one mark less would gain',
    ],
  )
    .argument(...layoutFile)
    .addOption(trimmer())
    .addOption(json())
    .action(async (file: string, options: EnoughOptions) => {
      const { enough } = await import('./commands/enough.ts');
      answer(await enough(file, options, world));
    });

  command(
    'suit',
    'Find sizes, within the room that the layout gives them, that make the cards from these sheets.',
    [
      'cardwright suit birthday.card.json --cards 12 --room "panel height 2 3/4 in to 3 in" -o twelve.card.json',
      'a panel that gives twelve',
    ],
  )
    .argument(...layoutFile)
    .addOption(new Option('--cards <number>', 'how many cards are wanted; without it, as the layout says'))
    .addOption(
      several(
        '--room <text>',
        'how far a length may move, as “panel width 2 in to 2 1/2 in”; may be given more than once, and counts beside the "room" of the file',
      ),
    )
    .addOption(new Option('-o, --output <file>', 'the new layout to write; - is standard output'))
    .addOption(trimmer())
    .addOption(json())
    .action(async (file: string, options: SuitOptions) => {
      const { suit } = await import('./commands/suit.ts');
      answer(await suit(file, options, world));
    });

  command(
    'recast',
    'Plan the layout again for another base, other units, marks or sheets: borders stay round and even.',
    [
      'cardwright recast birthday.card.json -o birthday-a6.card.json --units mm --base "105 x 148 mm"',
      'on an A6 base, in millimetres',
    ],
  )
    .argument(...layoutFile)
    .addOption(
      new Option(
        '-o, --output <file>',
        'the layout file to write; - is standard output; without it, nothing',
      ),
    )
    .addOption(
      new Option('--units <units>', 'inch or metric; without it, as the layout').choices(['in', 'mm']),
    )
    .addOption(
      new Option(
        '--base <size>',
        'the closed front, as "105 x 148 mm"; without it, the layout’s, brought down to a mark',
      ),
    )
    .addOption(
      several(
        '--sheets <what>',
        'other sheets: "300 x 300 mm" for every paper, "meadow 300 x 300 mm, 2" for one paper, "210 x 297 mm for 8 1/2 x 11 in" in place of those of one size; may be given more than once',
      ),
    )
    .addOption(
      new Option('--marks <length>', 'the marks that lengths are brought to; without it, 1/16 in or 1 mm'),
    )
    .addOption(new Option('--cards <number>', 'how many cards the set shall have'))
    .addOption(trimmer())
    .addOption(json())
    .action(async (file: string, options: RecastOptions) => {
      const { recast } = await import('./commands/recast.ts');
      answer(await recast(file, options, world));
    });

  command(
    'recut',
    'Plan again from the table as it is: some steps done, some pieces spoiled, scraps lying there.',
    [
      'cardwright recut birthday.card.json --done 1-4,5:2 --spoiled "1 panel/meadow"',
      'steps 1 to 4 are done and two workpieces of step 5; one panel is spoiled',
    ],
  )
    .argument(...layoutFile)
    .option(
      '--plan <file>',
      'the plan being cut by, as plan --json or recut --json wrote it; without it the set is planned anew, which gives the same plan every time',
    )
    .option(
      '--done <steps>',
      'steps that are done, such as 1-4,6; 5:2 for the first two workpieces of step 5',
      '',
    )
    .addOption(
      several(
        '--spoiled <what>',
        'spoiled or lost: a workpiece, such as meadow-1a2, or finished pieces, such as "2 panel/meadow"; may be given more than once',
      ),
    )
    .addOption(
      several(
        '--found <what>',
        'a scrap that is not in the plan, such as "meadow 3 x 12 in", width then height with the pattern upright; may be given more than once',
      ),
    )
    .addOption(trimmer())
    .addOption(prefer())
    .addOption(json())
    .action(async (file: string, options: RecutOptions) => {
      const { recut } = await import('./commands/recut.ts');
      answer(await recut(file, options, world));
    });

  command(
    'restock',
    'Bring the stash up to date once the set is cut: used sheets out, leftovers in as scraps, in a new layout file.',
    [
      'cardwright restock birthday.card.json -o next.card.json',
      'the same layout with the papers that are left',
    ],
  )
    .argument(...layoutFile)
    .addOption(output('the layout file to write'))
    .addOption(
      new Option(
        '--into <file>',
        'another layout: the leftovers alone are put to its papers of the same ids, and that is written',
      ),
    )
    .addOption(trimmer())
    .addOption(prefer())
    .addOption(spares())
    .action(async (file: string, options: RestockOptions) => {
      const { restock } = await import('./commands/restock.ts');
      answer(await restock(file, options, world));
    });

  command(
    'guide',
    'Make the printed guide: drawings, pieces, cutting steps and assembly, as a PDF at true scale.',
    ['cardwright guide birthday.card.json -o birthday.pdf --sheet a4 --units mm', 'on A4, in millimetres'],
  )
    .argument(...layoutFile)
    .addOption(output('the PDF to write'))
    .addOption(
      new Option(
        '--sheet <format>',
        'the paper it is printed on; without it, letter for inch layouts, else A4',
      ).choices(['letter', 'a4']),
    )
    .addOption(
      new Option('--units <units>', 'inch or metric; without it, as the layout').choices(['in', 'mm']),
    )
    .addOption(
      new Option(
        '--hand <hand>',
        'the hand it is for: for the other one than the trimmer’s, left and right change places, the measuring edge too, but no setting and no print; without it, as the trimmer says',
      ).choices(['left', 'right']),
    )
    .addOption(new Option('--type <points>', 'size of the text, 8 to 24 points; 16 and up is large print'))
    .addOption(trimmer())
    .addOption(post())
    .addOption(prefer())
    .addOption(spares())
    .action(async (file: string, options: GuideOptions) => {
      const { guide } = await import('./commands/guide.ts');
      answer(await guide(file, options, world));
    });

  command(
    'kits',
    'Fill bags for a class: several layouts, cut for everybody from shared sheets; what is short, and what would help.',
    ['cardwright kits class.kit.json', 'what is in each bag, what is cut from which sheets, what is short'],
    ['cardwright kits class.kit.json -o class.pdf', 'bag lists, labels, cutting and steps, to print'],
    [
      'cardwright kits class.kit.json --seats 16 --take 2 --gather more.kit.json',
      'two more seats, by the second offer',
    ],
  )
    .argument('<file>', 'the kit (*.kit.json); - is standard input')
    .addOption(new Option('--seats <number>', 'another number of seats than the file says'))
    .addOption(new Option('--teacher <number>', 'another number of bags for the teacher'))
    .addOption(new Option('--spare <number>', 'another number of spare bags'))
    .addOption(
      several(
        '--length <what>',
        'another length in one of the layouts, as “window panel width 2 1/2 in”: the layout, the part, the length; may be given more than once',
      ),
    )
    .addOption(
      new Option('--take <numbers>', 'take these offers, with commas between, and say what comes of it'),
    )
    .addOption(
      new Option(
        '--gather <file>',
        'write the kit as it then is, with its layouts in it; - is standard output',
      ),
    )
    .addOption(new Option('-o, --output <file>', 'the PDF to write; - is standard output'))
    .addOption(
      new Option(
        '--sheet <format>',
        'the paper it is printed on; without it, letter for inch kits, else A4',
      ).choices(['letter', 'a4']),
    )
    .addOption(new Option('--units <units>', 'inch or metric; without it, as the kit').choices(['in', 'mm']))
    .addOption(new Option('--type <points>', 'size of the text, 8 to 24 points; 16 and up is large print'))
    .addOption(trimmer())
    .addOption(prefer())
    .addOption(json())
    .action(async (file: string, options: KitsOptions) => {
      const { kits } = await import('./commands/kits.ts');
      answer(await kits(file, options, world));
    });

  command(
    'outline',
    'Take the outline of a part from an SVG drawing, and refuse all in it that is no outline.',
    ['cardwright outline leaf.svg', 'the fields "shape", "size" and "outline" of a part'],
  )
    .argument('<file>', 'the drawing (*.svg); - is standard input')
    .addOption(json())
    .action(async (file: string, options: OutlineOptions) => {
      const { outline } = await import('./commands/outline.ts');
      answer(await outline(file, options, world));
    });

  command(
    'ribbon',
    'Work out a folded ribbon: where a strip is creased, what it measures, and its folding template at true size.',
    [
      'cardwright ribbon --strip "6 3/4 x 1/2 in" --template "3 in" --gap "1/2 in"',
      'the slant that leaves half an inch between the tails',
    ],
  )
    .requiredOption(
      '--strip <size>',
      'the strip that is cut, as "6 3/4 x 1/2 in"; its longer side is its length',
    )
    .option('--template <length>', 'how far apart the middles of the two creases are, measured level')
    .option('--slant <degrees>', 'how steeply the middle rises to the right; below 0 it falls')
    .option('--gap <length>', 'the gap wanted between the tails, with --template or with --slant')
    .option(
      '--overall <size>',
      'what the folded ribbon is to measure, width then height, as "4 x 2 in", without the others',
    )
    .addOption(
      new Option('--units <units>', 'inch or metric; without it, as the strip is given').choices([
        'in',
        'mm',
      ]),
    )
    .addOption(new Option('-o, --output <file>', 'the template to write, as SVG; - is standard output'))
    .addOption(json())
    .action(async (options: RibbonOptions) => {
      const { ribbon } = await import('./commands/ribbon.ts');
      answer(await ribbon(options, world));
    });

  command('draw', 'Draw the finished card front at its true size, as SVG.', [
    'cardwright draw birthday.card.json -o birthday.svg --card 2',
    'the second card of the set',
  ])
    .argument(...layoutFile)
    .addOption(output('the SVG to write'))
    .addOption(new Option('--card <number>', 'which card of the set').default('1'))
    .addOption(new Option('--dimensions', 'with dimension lines round it, and whatever hangs over the card'))
    .addOption(
      new Option('--coloured', 'with each paper in its own colour; without it, black on light tints'),
    )
    .action(async (file: string, options: DrawOptions) => {
      const { draw } = await import('./commands/draw.ts');
      answer(await draw(file, options, world));
    });

  return program;
}

/** Examples for the foot of a help page. */
function example(...lines: readonly (readonly [command: string, does: string])[]): string {
  const widest = Math.max(...lines.map(([line]) => line.length));
  const shown = lines.map(([line, does]) => `  ${line.padEnd(widest)}   ${does}`);
  return `\n${lines.length === 1 ? 'Example' : 'Examples'}:\n${shown.join('\n')}\n`;
}

/** The goals of `--prefer`: spelt out here so that help need not load the planner; a test holds them to `kindnessOrder`. */
export const goals = [
  'settings',
  'passes',
  'turns',
  'alike',
  'leftover',
  'paper',
] as const satisfies readonly KindnessGoal[];

function goalsIn(text: string): readonly KindnessGoal[] {
  return text.split(',').map((word) => {
    const goal = goals.find((one) => one === word.trim());
    if (goal === undefined)
      throw new InvalidArgumentError(`“${word.trim()}” is none of ${goals.join(', ')}.`);
    return goal;
  });
}

/** `1/20`, `5%` or `0.05`, more than nothing and less than always. */
function riskIn(text: string): number {
  const found = /^(\d+(?:[.,]\d+)?)(?:\/(\d+)|\s*(%))?$/.exec(text.trim());
  const number = Number(found?.[1]?.replace(',', '.'));
  const risk = found?.[3] === '%' ? number / 100 : number / Number(found?.[2] ?? 1);
  if (!(risk > 0 && risk < 1))
    throw new InvalidArgumentError(`“${text}” is no chance; it may be written 1/20 or 5%.`);
  return risk;
}

/** Kept equal to package.json by a test. */
const version = '0.1.0';
