namespace SwingStudy.Motion.Tests.Support;

/// <summary>Normal noise of standard deviation one, the same for the same seed (sum of twelve uniform numbers of a linear congruential generator).</summary>
internal sealed class Noise(int seed)
{
    private ulong _state = ((ulong)seed * 2_862_933_555_777_941_757) + 3_037_000_493;

    public double Next()
    {
        var sum = -6.0;
        for (var i = 0; i < 12; i++)
        {
            _state = (_state * 6_364_136_223_846_793_005) + 1_442_695_040_888_963_407;
            sum += (_state >> 11) * (1.0 / (1UL << 53));
        }

        return sum;
    }
}
