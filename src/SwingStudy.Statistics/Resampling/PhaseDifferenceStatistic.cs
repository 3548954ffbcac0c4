namespace SwingStudy.Statistics.Resampling;

/// <summary>Mean of the rows of phase B minus mean of the rows of phase A.</summary>
/// <param name="values">One value a row, all finite.</param>
/// <param name="inB">Whether a row belongs to phase B, as long.</param>
public sealed class PhaseDifferenceStatistic(double[] values, bool[] inB) : RowStatistic
{
    /// <inheritdoc/>
    public override int Rows => Math.Min(values.Length, inB.Length);

    /// <inheritdoc/>
    public override double Of(ReadOnlySpan<int> rows)
    {
        double sumA = 0, sumB = 0, origin = rows.IsEmpty ? 0 : values[rows[0]];
        int a = 0, b = 0;
        foreach (var row in rows)
        {
            if (inB[row])
            {
                sumB += values[row] - origin;
                b++;
            }
            else
            {
                sumA += values[row] - origin;
                a++;
            }
        }

        return (sumB / b) - (sumA / a);
    }

    /// <inheritdoc/>
    public override RowStatistic Copy() => this;
}
