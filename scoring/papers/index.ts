/** Reports as data and HTML; PDF and PNG, which need Node, are in node.ts. */

export { standingSvg } from '../draw/standing-svg.ts';
export { attemptHtml } from './attempt-html.ts';
export { type AttemptPaper, attemptPaper, type PaperLine, type PaperOptions } from './attempt-paper.ts';
