/** A complaint about a design file as a sentence, for the page and for the command line. */
import type { Complaint } from '../design/decode.ts';
import type { Accepts } from '../design/schema.ts';
import { words } from '../words/en.ts';

const { notice } = words;

/** What is said of a file that is refused whole; it differs with where the sentence stands. */
interface FileWords {
  tooLarge(most: number): string;
  readonly notJson: string;
  readonly notDesign: string;
  later(version: number): string;
}

/** Whole files are refused in the words given, by default those of the page; single values in the same words everywhere. */
export function complaintSentence(complaint: Complaint, file: FileWords = notice): string {
  switch (complaint.kind) {
    case 'too large':
      return file.tooLarge(complaint.most);
    case 'not JSON':
      return file.notJson;
    case 'not a design':
      return file.notDesign;
    case 'later version':
      return file.later(complaint.version);
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
    case 'whole number within':
      return notice.accepts.wholeWithin(accepts.limits);
    case 'list':
      return notice.accepts.list(accepts.most);
    case 'text':
      return notice.accepts.text(accepts.length);
    case 'date':
      return notice.accepts.date;
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
