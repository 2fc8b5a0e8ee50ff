/** A complaint about a design file as the end of a sentence that has named the file. */
import { complaintSentence as sentence } from '../app/complaint.ts';
import type { Complaint } from '../design/decode.ts';
import { takeWords } from '../words/take.ts';

const fileWords = { ...takeWords, tooLarge: (_bytes: number, most: number) => takeWords.tooLarge(most) };

export function complaintSentence(complaint: Complaint): string {
  return sentence(complaint, fileWords);
}
