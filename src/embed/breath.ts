/** Lets the browser answer a touch and draw a frame between two pieces of work. */
export const breath = () => new Promise<void>((resume) => setTimeout(resume));
