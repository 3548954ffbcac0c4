using SwingStudy.Statistics.Chance;

namespace SwingStudy.Calibrate;

/// <summary>Draws players whose noise is known.</summary>
internal sealed class Player(Xoshiro256 random)
{
    private double? _spare;

    /// <summary>One standard normal number by Marsaglia's polar method.</summary>
    public double Normal()
    {
        if (_spare is { } spare)
        {
            _spare = null;
            return spare;
        }

        while (true)
        {
            var (x, y) = ((2 * random.NextUnit()) - 1, (2 * random.NextUnit()) - 1);
            var square = (x * x) + (y * y);
            if (square is >= 1 or 0)
                continue;
            var factor = Math.Sqrt(-2 * Math.Log(square) / square);
            _spare = y * factor;
            return x * factor;
        }
    }

    /// <summary>χ² with whole degrees of freedom.</summary>
    public double ChiSquare(int df)
    {
        var sum = 0.0;
        for (var i = 0; i < df; i++)
        {
            var z = Normal();
            sum += z * z;
        }

        return sum;
    }

    /// <summary>Sessions of one phase around a level.</summary>
    public double[][] Phase(Setting setting, double level)
    {
        var phase = new double[setting.Sessions][];
        for (var s = 0; s < phase.Length; s++)
        {
            var session = level + (setting.SessionDeviation * Normal());
            var swing = Normal();
            phase[s] = new double[setting.Swings];
            for (var k = 0; k < setting.Swings; k++)
            {
                if (k > 0)
                    swing = (setting.Dependence * swing) + (Math.Sqrt(1 - (setting.Dependence * setting.Dependence)) * Normal());
                phase[s][k] = session + swing;
            }
        }

        return phase;
    }
}
