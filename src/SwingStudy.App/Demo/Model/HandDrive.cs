namespace SwingStudy.App.Demo.Model;

/// <summary>What the player does with arms and wrists: how fast the arms are driven, and when the wrists let go and turn the club.</summary>
internal sealed record HandDrive
{
    /// <summary>Length of the straight lead arm from shoulder to hands, m.</summary>
    public double ArmLength { get; init; } = 0.70;

    /// <summary>Angle of the lead arm from hanging down, at top, rad.</summary>
    public double TopAngle { get; init; } = 2.51;

    /// <summary>Angle by which the club is folded against the line of the lead arm at top, rad.</summary>
    public double TopFold { get; init; } = 107 * Math.PI / 180;

    /// <summary>Duration of the backswing, s.</summary>
    public double BackswingTime { get; init; } = 0.78;

    /// <summary>Rate to which the arms are driven, rad/s.</summary>
    public double PeakRate { get; init; } = 13.07;

    /// <summary>When the drive is fastest, seconds from top.</summary>
    public double PeakTime { get; init; } = 0.12;

    /// <summary>Rate to which the drive then falls, rad/s.</summary>
    public double EndRate { get; init; } = 4;

    /// <summary>When it has fallen there, seconds from top.</summary>
    public double EndTime { get; init; } = 0.32;

    /// <summary>When the wrists stop holding the fold and begin to turn the club, seconds from top.</summary>
    public double ReleaseTime { get; init; } = 0.122;

    /// <summary>Greatest torque of the wrists on the club, N.m.</summary>
    public double WristTorque { get; init; } = 45;

    /// <summary>How long they turn it, s.</summary>
    public double WristTime { get; init; } = 0.203;

    /// <summary>Resistance of the wrists, N.m a rad/s.</summary>
    public double WristResistance { get; init; } = 0.327;

    /// <summary>The same downswing in slower or faster time: 1.1 takes ten per cent longer, with rates and torques to match.</summary>
    public HandDrive Slowed(double factor) => this with
    {
        PeakRate = PeakRate / factor, PeakTime = PeakTime * factor, EndRate = EndRate / factor, EndTime = EndTime * factor,
        ReleaseTime = ReleaseTime * factor, WristTorque = WristTorque / (factor * factor), WristTime = WristTime * factor, WristResistance = WristResistance / factor,
    };

    /// <summary>Rate of the drive and its change, seconds from top.</summary>
    public (double Rate, double Change) DriveAt(double time)
    {
        if (time < PeakTime)
        {
            var turn = Math.PI / 2 / PeakTime;
            return (PeakRate * Math.Sin(turn * time), PeakRate * turn * Math.Cos(turn * time));
        }

        var fall = EndTime - PeakTime;
        var x = (time - PeakTime) / fall;
        return x >= 1
            ? (EndRate, 0)
            : (EndRate + ((PeakRate - EndRate) * 0.5 * (1 + Math.Cos(Math.PI * x))), -(PeakRate - EndRate) * 0.5 * Math.PI / fall * Math.Sin(Math.PI * x));
    }

    /// <summary>Torque of the wrists that opens the fold, N.m.</summary>
    public double TorqueAt(double time)
    {
        var x = (time - ReleaseTime) / WristTime;
        var wave = Math.Sin(Math.PI * x);
        return x is <= 0 or >= 1 ? 0 : WristTorque * wave * wave;
    }
}
