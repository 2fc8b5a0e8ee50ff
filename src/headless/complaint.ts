/** A design file's complaint as the end of a sentence. */
import type { Accepts, Complaint } from '../design/decode.ts';
import { words } from '../words/en.ts';
import { takeWords } from '../words/take.ts';

const { notice } = words;

export function complaintSentence(complaint: Complaint): string {
  switch (complaint.kind) {
    case 'too large':
      return takeWords.tooLarge(complaint.most);
    case 'not JSON':
      return takeWords.notJson;
    case 'not a design':
      return takeWords.notDesign;
    case 'later version':
      return takeWords.later(complaint.version);
    case 'value':
      return notice.at(complaint.path, complaint.read, accepted(complaint.accepts));
  }
}

function accepted(accepts: Accepts): string {
  switch (accepts.kind) {
    case 'number':
      return notice.accepts.number(accepts.limits);
    case 'whole number':
      return notice.accepts.whole;
    case 'text':
      return notice.accepts.text(accepts.length);
    case 'choice':
      return notice.accepts.choice(accepts.options);
    case 'yes or no':
      return notice.accepts.yesNo;
    case 'entries':
      return notice.accepts.entries;
    case 'no such entry':
      return notice.accepts.nothing;
  }
}
