/** Counts, the modelled chance of a cause, its interval and its explanation. */
export function MethodCauses() {
  return (
    <>
      <h2>Counts come first</h2>
      <p>
        “23 of 61 matching cases” is a plain count: 61 accepted cases carry everything that you said, and in 23 of them this was
        the cause. A case counts whole, however its cause was proved; one whose cause was not found stays in the 61. What you did
        not mention never enters a count.
      </p>

      <h2>The chance of a cause</h2>
      <p>
        Few cases carry exactly your findings, so the chance is put together from cases that carry parts of them. It starts from
        how often units like yours fail in each way, and every finding moves it by how much more often that finding goes with one
        cause than with another. What you did not mention moves nothing, with three exceptions:
      </p>
      <ul>
        <li>Whoever sees a grey picture sees a picture, so whatever would have hidden it, such as a dead unit, is absent.</li>
        <li>
          Whoever writes that something is fine (“picture fine”) has looked at it, so every fault is absent that would have shown
          there. “Has video” says less, and clears only what would leave none.
        </li>
        <li>Where you tick “that is all I see”, an unmentioned symptom is absent, where it could have been seen at all.</li>
      </ul>
      <p>
        That a check was done says nothing by itself; only what it showed does. And a dead unit has no picture whatever its cause, so
        of “dead, no picture” only “dead” counts.
      </p>
      <code className="formula">P(cause | findings) ∝ P(cause) × ∏ P(finding | cause)^w</code>
      <p>
        The exponent w says how far a finding is taken at its word: findings that come in company repeat each other, and are
        weighed less; symptoms, besides, the less the more of them are present. Two things are taken in full: what came of a
        fix, and that a check was passed which a good part passes, against the parts that it is known to clear (unless the check
        has turned out to say little). What a check shows is read against the unit’s state, as far as the symptoms tell it:
        without power, a dead rail says little about which part is to blame. Each P(finding | cause) is drawn toward what is usual
        where a cause has few cases:
      </p>
      <code className="formula">P(v | c) = (n(c, v) + m × q(v)) / (n(c) + m)</code>
      <p>
        n counts cases, weighed by how the cause was proved: by substitution or measurement fully, by the repair holding at eight
        tenths, only suspected at three tenths. q is what other causes show: those that a check is about apart from those that it
        is not, and among the latter every cause with one voice at most, however common it is, causes of the same area of the
        unit before all others. m is how many cases that is worth; m and w come from the cases themselves, each predicted with its
        own record left out. A board with many cases speaks for itself; one with few borrows from its model, its maker and its
        kind, and from other boards that carry the same part. A cause that the catalogue rules out on a device starts far lower
        there, but not at nought: catalogues have gaps.
      </p>
      <p>
        The check that proved a cause, and the fix that cured it, never help to predict their own case: you ask before they were
        done.
      </p>

      <h2>None of these</h2>
      <p>
        Some causes are on no record yet. Their share before anything was seen is reckoned from how many causes have been met only
        once: where every third case brings something new, the next one may well too (I. J. Good, “The population frequencies of
        species and the estimation of population parameters”, Biometrika 40, 1953).
      </p>

      <h2>The bracket</h2>
      <p>
        The bracket holds 90% of what the chance could be, given how few or many cases stand behind it and how far the model has
        been off on cases that it had not seen. An end that stands for less than one case of the whole casebook is given as 0% or
        100%, since a casebook of that size cannot tell it from never or always. A wide bracket means: ask the unit, not the casebook.
      </p>

      <h2>The evidence</h2>
      <p>
        Opening a cause shows how its odds came about, in decibans: ten times the logarithm of an odds ratio. 10&nbsp;dB is ten to
        one, 3&nbsp;dB about two to one, and evidence adds up.
      </p>
      <code className="formula">weight of a finding = w × 10 log₁₀( P(finding | cause) / P(finding | rival) )</code>
      <p>
        Against one rival the rows add up to the total exactly. Against all others together two rows more are needed: what the
        findings say jointly beyond each alone (the others change their standing as findings come in), and the small share of the
        starting odds that is always held open.
      </p>
    </>
  );
}
