/** The next check, the plan, the fixes and the similar cases. */
export function MethodChoices() {
  return (
    <>
      <h2>What to check next</h2>
      <p>
        For each check that can still be done: how likely each outcome is now, and how much it would leave less to guess, in bits.
        One bit halves the field.
      </p>
      <code className="formula">bits = Σ P(outcome) × Σ P(cause | outcome) log₂( P(cause | outcome) / P(cause) )</code>
      <p>
        Checks are ranked by bits per minute within the least invasive stage that still pays: what can be done outside the case
        comes before opening it, and nothing that needs the iron stands above a useful check that does not. A check with the
        instrument in place from the one before is reckoned at six tenths of its minutes. A check that tells less than a hundredth
        of a bit is not offered, and none is once a cause has reached 95%.
      </p>
      <p>
        Two things go before the ranking. Before the unit is powered for the first time come the supply measured apart from it and
        the rails tested for a short, whatever they tell. And work on the mains side or at high voltage does not stand first while
        any other check is offered.
      </p>

      <h2>The repair plan</h2>
      <p>
        The plan orders checks and fixes so that the expected cost stays low: your time at what you say it is worth, parts, and
        what it costs to stop or hand the unit over if nothing helped. Where each fix cures other causes than the next, it does
        first what cures most per cost (J. B. Kadane and H. A. Simon, “Optimal strategies for a class of constrained sequential
        problems”, Annals of Statistics 5, 1977); with checks among the steps it looks ahead. How likely a fix cures a cause is
        counted over the cases of that cause in which it was tried; where these are few it leans on what the fix did for its other
        causes, and on all fixes. The plan does not begin with work on the mains side or at high voltage while a safer step pays.
      </p>

      <h2>Which fix most often resolved it</h2>
      <p>
        Of the times that a fix was tried on units that show what yours shows: how often it cured, failed attempts counted. A cure
        that came back later counts as none. Where your device has few tries, the bracket borrows up to four from its model, its
        maker and its kind. The list is ranked by the lower end of the bracket, so that one of one does not beat forty of fifty;
        what was never tried on your device stands after what was.
      </p>

      <h2>Cases like yours</h2>
      <p>
        Ranked by the findings that they share with your unit: the more a finding tells about the cause, the more it counts.
        Findings that contradict your unit count against a case, and so does a long list of findings, as it shares something with
        every unit. A near device and a proved cause count for it.
      </p>
    </>
  );
}
