namespace SwingStudy.Motion.Events;

/// <summary>Marks, breaks and addresses as a linear model of three fixed effects (place, delay of marks, distance of addresses) with a random place for each swing.</summary>
/// <remarks>
/// Given the swing's own place, its evidence is independent with variances d: so all forms of the inverse covariance V⁻¹ come from sums of 1/d,
/// aᵀV⁻¹b = Σab/d − τ²/(1 + τ²Σ1/d) · Σa/d · Σb/d (Sherman and Morrison). Estimates are those of generalised least squares, the single places best linear unbiased
/// predictions. Source: Robinson (1991), Stat Sci 6:15.
/// </remarks>
/// <param name="swings">Evidence of each swing, a mark or a break at least.</param>
/// <param name="origin">Taken off marks and breaks.</param>
/// <param name="delayPrecision">Inverse variance of the prior of the delay; infinite: there is none.</param>
/// <param name="addressOrigin">Taken off addresses; NaN: they are not heeded.</param>
internal sealed class PlaceModel(IReadOnlyList<ContactEvidence> swings, double origin, double delayPrecision, double addressOrigin)
{
    private readonly bool _hasDelay = !double.IsPositiveInfinity(delayPrecision);
    private readonly bool _hasAddress = !double.IsNaN(addressOrigin);

    /// <summary>Solves for scatters of the balls in metres, of marks in seconds and of addresses in metres; null where their likelihood is below a least one.</summary>
    public PlaceSolution? Solve(double ball, double mark, double address, double leastLogLikelihood)
    {
        // Normal equations of place, delay and distance; an effect that is not there has a row of its own that changes nothing.
        var (aa, ab, ac, bb, bc, cc) = (0.0, 0.0, 0.0, _hasDelay ? delayPrecision : 1.0, 0.0, _hasAddress ? 0.0 : 1.0);
        var (a, b, c, squares, logDeterminant) = (0.0, 0.0, 0.0, 0.0, 0.0);
        var pull = ball * ball;
        var terms = new Terms[swings.Count];
        for (var i = 0; i < terms.Length; i++)
        {
            var own = terms[i] = TermsOf(swings[i], pull, mark, address);
            aa += own.Sum * own.Share;
            ab += own.Delay * own.Share;
            ac += own.Address * own.Share;
            bb += (own.Delay * own.Speed) - (pull * own.Share * own.Delay * own.Delay);
            bc -= pull * own.Share * own.Delay * own.Address;
            cc += own.Address - (pull * own.Share * own.Address * own.Address);
            a += own.Of * own.Share;
            b += own.DelayOf - (pull * own.Share * own.Delay * own.Of);
            c += own.AddressOf - (pull * own.Share * own.Address * own.Of);
            squares += own.Squares - (pull * own.Share * own.Of * own.Of);
            logDeterminant += own.LogDeterminant;
        }

        // The inverse of a symmetric matrix of three rows by its cofactors.
        var (ia, ib, ic) = ((bb * cc) - (bc * bc), (ac * bc) - (ab * cc), (ab * bc) - (ac * bb));
        var (ibb, ibc, icc) = ((aa * cc) - (ac * ac), (ab * ac) - (aa * bc), (aa * bb) - (ab * ab));
        var determinant = (aa * ia) + (ab * ib) + (ac * ic);
        var place = ((ia * a) + (ib * b) + (ic * c)) / determinant;
        var delay = ((ib * a) + (ibb * b) + (ibc * c)) / determinant;
        var distance = ((ic * a) + (ibc * b) + (icc * c)) / determinant;
        var likelihood = -0.5 * (logDeterminant + Math.Log(determinant) + squares - (a * place) - (b * delay) - (c * distance));
        if (likelihood < leastLogLikelihood)
            return null;
        var found = new (double, double)[terms.Length];
        for (var i = 0; i < terms.Length; i++)
        {
            var own = terms[i];
            var share = pull * own.Share;
            var (onPlace, onDelay, onDistance) = (1 - (share * own.Sum), -share * own.Delay, -share * own.Address);
            var ofEffects = ((ia * onPlace * onPlace) + (ibb * onDelay * onDelay) + (icc * onDistance * onDistance)
                + (2 * ((ib * onPlace * onDelay) + (ic * onPlace * onDistance) + (ibc * onDelay * onDistance)))) / determinant;
            found[i] = ((share * own.Of) + (onPlace * place) + (onDelay * delay) + (onDistance * distance), (pull * (1 - (share * own.Sum))) + ofEffects);
        }

        return new PlaceSolution(ball, likelihood, place, ia / determinant, found);
    }

    private Terms TermsOf(ContactEvidence swing, double pull, double mark, double address)
    {
        var (sum, of, squares, logs) = (0.0, 0.0, 0.0, 0.0);
        var (delay, delayOf, addresses, addressOf) = (0.0, 0.0, 0.0, 0.0);
        if (swing.HasMark)
        {
            var (weight, value) = Add((swing.SpeedMps * swing.SpeedMps * mark * mark) + (swing.MarkFloorM * swing.MarkFloorM), swing.MarkedAtM - origin);
            if (_hasDelay)
                (delay, delayOf) = (swing.SpeedMps * weight, swing.SpeedMps * weight * value);
        }

        if (swing.HasBreak)
            Add(swing.BreakScatterM * swing.BreakScatterM, swing.BreakAtM - origin);
        if (_hasAddress && swing.HasAddress)
        {
            var (weight, value) = Add(address * address, swing.AddressAtM - addressOrigin);
            (addresses, addressOf) = (weight, weight * value);
        }

        return new Terms(swing.SpeedMps, sum, 1 / (1 + (pull * sum)), of, squares, logs + Math.Log(1 + (pull * sum)), delay, delayOf, addresses, addressOf);

        (double Weight, double Value) Add(double variance, double value)
        {
            sum += 1 / variance;
            of += value / variance;
            squares += value * value / variance;
            logs += Math.Log(variance);
            return (1 / variance, value);
        }
    }

    /// <summary>Sums of one swing's evidence over its variances.</summary>
    /// <param name="Speed">Speed of the head.</param>
    /// <param name="Sum">Of ones.</param>
    /// <param name="Share">1/(1 + τ²·Sum).</param>
    /// <param name="Of">Of the evidence.</param>
    /// <param name="Squares">Of its squares.</param>
    /// <param name="LogDeterminant">Logarithm of the covariance's determinant.</param>
    /// <param name="Delay">Of the delay's column: the mark's speed.</param>
    /// <param name="DelayOf">Of that column times the evidence.</param>
    /// <param name="Address">Of the distance's column: the address.</param>
    /// <param name="AddressOf">Of that column times the evidence.</param>
    private readonly record struct Terms(
        double Speed, double Sum, double Share, double Of, double Squares, double LogDeterminant, double Delay, double DelayOf, double Address, double AddressOf);
}
