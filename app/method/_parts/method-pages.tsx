/** The counted figures of the casebook's pages: shares, fixes, weak spots, usual readings. */
export function MethodPages() {
  return (
    <>
      <h2>The figures on the pages of the casebook</h2>
      <h3>Shares</h3>
      <p>
        On the pages of symptoms, devices, parts and fixes nothing is modelled: every share is so many cases of so many. Its
        bracket says how far such a share could be off for want of cases, and nothing else; it does not cover that cases are
        volunteered. A share of one thing among all cases has Jeffreys’ interval (L. D. Brown, T. T. Cai and A. DasGupta,
        “Interval estimation for a binomial proportion”, Statistical Science 16, 2001); the shares of several causes, of which a
        case has one, have the marginals of a Dirichlet distribution with half a case for each of the k causes seen, “not found”
        among them.
      </p>
      <code className="formula">x of n: the middle 90% of Beta(x + ½, n − x + ½)</code>
      <code className="formula">x of n, one of k causes: the middle 90% of Beta(x + ½, n − x + (k − 1)/2)</code>
      <h3>Fixes</h3>
      <p>
        A try is one attempt in one case; fixes done together count as a try of each. Only a whole cure counts as one. On a
        fix’s own page and on a part’s page each row stands alone. Where a symptom’s page is narrowed to a device, a device with
        few tries borrows up to four from its model, its maker and its kind. The square of a row is larger where more was tried;
        the diamond is everything together.
      </p>
      <h3>Weak spots</h3>
      <p>
        A part is called a weak spot of a device where its share of the device’s cases and its share on the other devices of the
        category, those without such a part left out, have 90% intervals that do not overlap, and three cases or more stand
        behind it. Shares whose 90% intervals just miss each other differ at about the 2% level (H. Goldstein and M. J. R. Healy,
        “The graphical presentation of a collection of means”, Journal of the Royal Statistical Society A 158, 1995). Over some
        thirty parts, about one device in three shows such a part by chance.
      </p>
      <h3>Suspected parts</h3>
      <p>
        A part counts as suspected in a case where somebody did a check of it or tried a fix of it, whatever came of it. How often
        it then was the cause says as much about the habits of repairers as about the part.
      </p>
      <h3>Usual readings</h3>
      <p>
        States are counted over the working units of one board. Numbers have their median and a tolerance interval that holds 95%
        of working units, as surely as 95%, if readings are near normal (R. E. Odeh and D. B. Owen, “Tables for normal tolerance
        limits, sampling plans, and screening”, 1980). Three readings are the least; from five on, readings thirty deviations off
        are taken for slips and set aside.
      </p>
      <code className="formula">range = mean ± k s + half a step of the meter; k = 5.08 for 5 readings, 2.76 for 20</code>
    </>
  );
}
