/** The page loaded anew: only where it is served at all, since a page that is there is better than none. */

/** False when the page is not served now; else it goes, and comes back at the hash that `at` gives. */
export async function loadAnew(at: () => Promise<string>): Promise<boolean> {
  if (!(await isServed())) return false;
  history.replaceState(null, '', await at());
  location.reload();
  return true;
}

/** Asks for the page's style sheet once more, past all that is put by. The one-file page has none to ask for. */
function isServed(): Promise<boolean> {
  const sheet = document.querySelector<HTMLLinkElement>('link[rel=stylesheet]');
  if (!sheet) return Promise.resolve(true);
  const question = Object.assign(document.createElement('link'), {
    rel: 'stylesheet',
    href: `${sheet.href}?${Date.now()}`,
    media: 'not all',
  });
  return new Promise((resolve) => {
    const answer = (isThere: boolean) => {
      question.remove();
      resolve(isThere);
    };
    question.onload = () => answer(true);
    question.onerror = () => answer(false);
    document.head.append(question);
  });
}
