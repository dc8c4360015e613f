import { type ReactNode, useEffect, useRef, useState } from 'react';
import { stemOf } from '../../exchange/fileName.ts';
import { saveFile } from '../../exchange/saveFile.ts';
import { ChoiceBlank, choicesOf } from '../../form/choiceBlank.tsx';
import { Sentence } from '../../form/sentence.tsx';
import { useMessages } from '../../messages/messages.ts';
import { guidePdf, type MadeGuide } from '../../pdf/guidePdf.ts';
import { useWorld } from '../../world.ts';
import { typeSizes } from '../guide/guideOptions.ts';
import { printFile } from '../guide/printFile.ts';
import { useOpenKit } from './kitContext.ts';

/** The guide of the kit: on what it is printed, saved or printed; only where every bag can be filled. */
export function KitGuide(): ReactNode {
  const { kit: says, guide } = useMessages();
  const { now } = useWorld();
  const report = useOpenKit((state) => state.report);
  const stage = useOpenKit((state) => state.stage);
  const { units: own } = report.kit;
  const [how, setHow] = useState<{
    sheetFormat?: 'letter' | 'a4';
    units?: 'in' | 'mm';
    type?: keyof typeof typeSizes;
  }>({});
  const [told, setTold] = useState({ isProblem: false, says: '' });
  const control = useRef<AbortController | null>(null);
  useEffect(() => () => control.current?.abort(), []);
  const units = how.units ?? own;
  const sheetFormat = how.sheetFormat ?? (own === 'in' ? 'letter' : 'a4');
  const type = how.type ?? 'usual';
  const canPrint =
    stage === 'done' &&
    report.planned?.plan != null &&
    report.planned.shortage === null &&
    report.problems.every(({ problem }) => problem.severity !== 'error');
  const make = (then: (made: MadeGuide) => string) => {
    control.current?.abort();
    control.current = new AbortController();
    const { signal } = control.current;
    setTold({ isProblem: false, says: says.making });
    guidePdf({ report, sheetFormat, units, bodyPt: typeSizes[type], madeAt: now() }, signal).then(
      (made) => setTold({ isProblem: false, says: then(made) }),
      (problem: unknown) => {
        if (signal.aborted) return;
        const message = problem instanceof Error ? problem.message : String(problem);
        setTold({ isProblem: true, says: says.guideFailed(message) });
      },
    );
  };
  return (
    <section aria-labelledby="kit-guide">
      <h2 id="kit-guide">{says.headings.guide}</h2>
      <p>{says.guideSays}</p>
      <Sentence
        says={says.printed}
        blanks={{
          sheet: (
            <ChoiceBlank
              name="sheet"
              label={guide.sheet}
              value={sheetFormat}
              choices={choicesOf(guide.sheets)}
              onSet={(to) => setHow({ ...how, sheetFormat: to })}
            />
          ),
          units: (
            <ChoiceBlank
              name="units"
              label={guide.units}
              value={units}
              choices={choicesOf(guide.unitWords)}
              onSet={(to) => setHow({ ...how, units: to })}
            />
          ),
          type: (
            <ChoiceBlank
              name="type"
              label={guide.type}
              value={type}
              choices={choicesOf(guide.types)}
              onSet={(to) => setHow({ ...how, type: to })}
            />
          ),
        }}
      />
      {canPrint ? null : <p>{says.guideShort}</p>}
      <p className="deeds">
        <button
          type="button"
          className="say"
          disabled={!canPrint}
          onClick={() =>
            make(({ pdf, pages }) => {
              const name = `${stemOf(report.kit.title)}.pdf`;
              saveFile(name, pdf, 'application/pdf');
              return says.saved(name, pages);
            })
          }
        >
          {says.save}
        </button>
        <button
          type="button"
          className="say"
          disabled={!canPrint}
          onClick={() =>
            make(({ pdf }) => {
              printFile(pdf);
              return '';
            })
          }
        >
          {says.print}
        </button>
      </p>
      <p role="status" className={told.isProblem ? 'notice' : undefined}>
        {told.says}
      </p>
    </section>
  );
}
