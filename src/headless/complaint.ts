/** A complaint about a design file as the end of a sentence that has named the file. */
import { complaintSentence as sentence } from '../app/complaint.ts';
import type { Complaint } from '../design/decode.ts';
import { takeWords } from '../words/take.ts';

export function complaintSentence(complaint: Complaint): string {
  return sentence(complaint, takeWords);
}
