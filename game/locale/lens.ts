import { oneDecimal, whole } from './numbers.ts';

/** Words of the close view. */
export const lensWords = {
  label: 'Close view of the weld. It follows the arc; the hand steers on the whole joint beside it.',
  asked: 'The weave asked for, at its own beat',
  straight: 'The run asked for, at its own pace',
  /** @param times how much larger the close view is than the joint the hand steers on */
  larger: (times: number) => `${oneDecimal(times)} times as large as the joint you steer on`,
  hand: (joint_mm: number) => `10 mm on the screen move the arc ${whole(joint_mm * 10)} mm`,
  slow: 'plain: this machine draws too slowly for the lens',
};
