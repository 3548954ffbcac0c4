namespace SwingStudy.App.Demo.Model;

/// <summary>Angles of lead arm and club from hanging down, positive away from the target, and their rates.</summary>
/// <param name="Arm">Lead arm, rad.</param>
/// <param name="ArmRate">Its rate, rad/s.</param>
/// <param name="Club">Club, rad.</param>
/// <param name="ClubRate">Its rate, rad/s.</param>
internal readonly record struct LinkState(double Arm, double ArmRate, double Club, double ClubRate)
{
    /// <summary>Angle by which the club is folded against the line of the arm, rad.</summary>
    public double Fold => Club - Arm;

    /// <summary>Rate of the fold, rad/s.</summary>
    public double FoldRate => ClubRate - ArmRate;

    /// <summary>The state after a step with these rates.</summary>
    public LinkState Moved(LinkState rates, double step) =>
        new(Arm + (step * rates.Arm), ArmRate + (step * rates.ArmRate), Club + (step * rates.Club), ClubRate + (step * rates.ClubRate));
}
