import { render } from "preact";

/** The least that could ask anything: plain preact and two questions written into the code. */
const questions = [
  { heading: "Is anything dangerous right now?", answers: ["No, nothing", "Yes"] },
  { heading: "What is the ice maker doing?", answers: ["It makes no ice", "Something else"] },
];

const place = document.querySelector("#floor") as HTMLElement;

function show(index: number): void {
  const { heading, answers } = questions[index % questions.length] as (typeof questions)[0];
  const ask = (
    <div key={index}>
      <h2>{heading}</h2>
      {answers.map((answer) => (
        <button key={answer} type="button" onClick={() => show(index + 1)}>
          {answer}
        </button>
      ))}
    </div>
  );
  render(ask, place);
}

show(0);
