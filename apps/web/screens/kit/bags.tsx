import type { ReactNode } from 'react';
import { layoutName } from '../../../../src/kits/index.ts';
import {
  bagLines,
  bagSentence,
  bagsName,
  cutListSentences,
  kitTotalsSentences,
} from '../../../../src/words/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { useOpenKit, useShowing } from './kitContext.ts';
import { problemSentences } from './short.tsx';

/** What is in each bag, what all of them take, and what is cut from each paper. */
export function Bags(): ReactNode {
  const { kit: says } = useMessages();
  const report = useOpenKit((state) => state.report);
  const showing = useShowing();
  const { planned } = report;
  const cautions = problemSentences(report, 'caution', showing);
  return (
    <>
      <section aria-labelledby="kit-bags">
        <h2 id="kit-bags">{says.headings.bags}</h2>
        {report.contents.map((bag) => (
          <div key={bag.bags[0]} lang="en">
            <h3>
              {bagsName(bag, report)}: {bagSentence(bag)}
            </h3>
            <div className="bag-lists">
              {bag.layouts.map((one) => (
                <div key={one.layout.id}>
                  <h4 translate="no">{layoutName(one.layout)}</h4>
                  <ul>
                    {bagLines(one, showing).map((line) => (
                      <li key={line}>{line}</li>
                    ))}
                  </ul>
                </div>
              ))}
            </div>
          </div>
        ))}
        <h3>{says.headings.all}</h3>
        <ul lang="en">
          {kitTotalsSentences(report).map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      </section>
      {planned === null ? null : (
        <section aria-labelledby="kit-cut">
          <h2 id="kit-cut">{says.headings.cut}</h2>
          <ul lang="en" className="cut-list">
            {planned.cuts.map((list) => {
              const [first, ...sizes] = cutListSentences(list, planned.set.layout, showing);
              return (
                <li key={list.paper.id}>
                  {first}
                  {sizes.map((size) => (
                    <p key={size}>{size}</p>
                  ))}
                </li>
              );
            })}
          </ul>
        </section>
      )}
      {cautions.length === 0 ? null : (
        <section aria-labelledby="kit-care">
          <h2 id="kit-care">{says.headings.care}</h2>
          <ul lang="en">
            {cautions.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}
