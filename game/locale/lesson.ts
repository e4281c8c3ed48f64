import type { LessonStep } from '../core/session/lesson.ts';

/** Words of the first lesson. */
export const lessonWords = {
  title: 'First lesson',
  offer:
    'New at this bench? A lesson of six steps, under five minutes: from what a tee is to a first look at the root.',
  begin: 'Begin the lesson',
  goOn: 'Go on with the lesson',
  again: 'Take the first lesson again',
  notNow: 'Not now',
  place: (n: number, of: number) => `Step ${n} of ${of}`,
  next: 'Next',
  back: 'Back',
  end: 'End the lesson',
  leave: 'Leave the lesson',
  show: 'Show me',
  steps: {
    joint: {
      title: 'What a tee is',
      text: 'One plate stands on the face of another. The weld goes into the corner, from the bottom up. The line where the plates meet is the root; the two edges of the weld are its toes. The job: melt the root, wet in both toes, and leave no hump between them.',
    },
    weave: {
      title: 'The weave',
      text: 'The line is the path asked for here: wait at a toe, up over the root onto the front of the puddle, wait at the other toe. Rings mark where the hand rests. Each wait lets the metal fill the toe; a middle that is crossed quickly stays flat.',
    },
    robot: {
      title: 'Five seconds of it',
      text: 'The robot hand welds this weave for five seconds. Look at the front of the puddle and at the toes, as through a helmet, not at the arc itself.',
    },
    straight: {
      title: 'Your turn: a straight run with a shelf',
      text: 'No weave yet. Press on the bottom of the joint and hold. Wait until the puddle is a shelf across the corner, some two seconds, then climb on it at about 3 mm a second, to the top. Let go, and say “finish here”. By keyboard: go to the joint with Tab, hold Space, climb with the up arrow, end with Enter.',
      tooShort: 'That was short. Hold on for at least four seconds, or there is no bead to look at.',
    },
    cut: {
      title: 'The first cut',
      text: 'This is your bead sawn through at the line A–A. Drag the line, or go to it with Tab and use the arrows: the cut follows. A leg reaches from the root along a plate to a toe; convexity is how far the face stands out over the straight line from toe to toe.',
    },
    root: {
      title: 'The first look at the root',
      text: 'The strip beside the joint is the root laid open, as if the fillet had been broken: hatched where both plates melted together, bare and ruled where they never joined. A bead can look good from outside over a bare root: look here first. Then read the one thing to change, and weld another.',
    },
  } satisfies Record<LessonStep, { title: string; text: string; tooShort?: string }>,
};
