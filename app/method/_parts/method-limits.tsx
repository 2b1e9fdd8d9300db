/** What the figures cannot say. */
export function MethodLimits() {
  return (
    <>
      <h2>Limits</h2>
      <ul>
        <li>
          Cases are volunteered, not sampled. What is dull to write up is missing, and so are units that nobody brought to a
          bench.
        </li>
        <li>A unit is taken to have one fault. Two faults at once can point to a third that is not there.</li>
        <li>A reading can be wrong, and so can a record. A finding that fits nothing else is worth taking again.</li>
        <li>
          Symptoms that nobody wrote down are not recorded, not absent: “in 148 of 4,200 cases” is the least that it can be.
        </li>
        <li>
          Who repairs what, and how, changes over the years and from bench to bench. The figures take all cases together, old and
          new.
        </li>
        <li>A chance is a chance: of ten units at 30%, three had this cause and seven did not.</li>
        <li>
          A fix that worked for others worked together with what they had checked before. The figures do not say that it works
          because it comes first.
        </li>
      </ul>
    </>
  );
}
