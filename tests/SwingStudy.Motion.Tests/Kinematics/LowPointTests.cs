using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Kinematics;
using SwingStudy.Motion.Tests.Support;

namespace SwingStudy.Motion.Tests.Kinematics;

/// <summary>The lowest point of invented paths that are known in closed form, with contact between samples and a club that loses speed there.</summary>
public class LowPointTests
{
    private const int Draws = 16;

    [Theory]
    // Largest root mean squares, millimetres: along the target line, below contact. The path is so flat there that half a millimetre of height is 30 mm along.
    [InlineData(200, 0.0005, 8, 0.4)]
    [InlineData(240, 0.0003, 5, 0.2)]
    [InlineData(240, 0.001, 10, 0.5)]
    [InlineData(500, 0.0005, 5, 0.2)]
    [InlineData(1000, 0.001, 6, 0.3)]
    public void ItLiesWhereThePathIsLowest(double rate, double noise, double along, double below)
    {
        var swing = new InventedSwing();
        // Steeper or shallower by leaning the whole path in the plane along the target line: lowest before, at and after contact.
        foreach (var lean in new[] { -0.04, 0, 0.06 })
        {
            Vector3D Head(double time) => Leant(swing, lean, time);
            var lowest = Enumerable.Range(-400, 801).Select(i => Head(i * 1e-4)).MinBy(place => place.Y);
            var (alongSquares, belowSquares) = (0.0, 0.0);
            for (var seed = 1; seed <= Draws; seed++)
            {
                var found = LowPoint.Of(InventedSwing.Seen(Head, rate, noise, seed, phaseS: seed / (double)Draws / rate), Head(0), 0)!;
                alongSquares += Math.Pow(1000 * (found.AlongM - lowest.X + Head(0).X), 2);
                belowSquares += Math.Pow(1000 * (found.BelowM - Head(0).Y + lowest.Y), 2);
            }

            Assert.InRange(Math.Sqrt(alongSquares / Draws), 0, along);
            Assert.InRange(Math.Sqrt(belowSquares / Draws), 0, below);
        }
    }

    [Fact]
    public void WithoutEnoughSamplesOrALowestPointThereIsNone()
    {
        var swing = new InventedSwing();
        Assert.Null(LowPoint.Of(InventedSwing.Seen(swing.Head, 100, 0), swing.Head(0), 0));
        // A head that still falls where the samples end.
        Assert.Null(LowPoint.Of(InventedSwing.Seen(time => Leant(swing, 0.4, time), 500, 0), Leant(swing, 0.4, 0), 0));
        var seen = InventedSwing.Seen(swing.Head, 500, 0);
        Assert.Null(LowPoint.Of(seen.Map(values => [.. values.Select((x, i) => Math.Abs(seen.Axis.TimeOf(i)) < 0.003 ? double.NaN : x)]), swing.Head(0), 0));
        Assert.Null(LowPoint.Of(seen, Vector3D.Missing, 0));
    }

    private static Vector3D Leant(InventedSwing swing, double radians, double time) => Rotation3D.About(new Vector3D(0, 0, 1), -radians).Turn(swing.Head(time) - swing.Head(0));
}
