namespace SwingStudy.App.Demo.Model;

/// <summary>How the player uses the ground. Sizes are in body weights (moments in newton metres), times in seconds from top.</summary>
internal sealed record FootWork
{
    /// <summary>By how much the vertical force falls below body weight while the player sinks.</summary>
    public double SinkSize { get; init; } = 0.2325;

    /// <summary>When it is lowest; it begins before, in the backswing.</summary>
    public double SinkTime { get; init; } = -0.12;

    /// <summary>By how much the vertical force exceeds body weight at its peak.</summary>
    public double PushSize { get; init; } = 0.88;

    /// <summary>When it peaks.</summary>
    public double PushTime { get; init; } = 0.11;

    /// <summary>Half the duration of sinking and of pushing.</summary>
    public double PushHalfTime { get; init; } = 0.15;

    /// <summary>Peak of the force to the target.</summary>
    public double ShiftSize { get; init; } = 0.19;

    /// <summary>When it peaks.</summary>
    public double ShiftTime { get; init; }

    /// <summary>Peak of the force toward the toes, around top.</summary>
    public double ToeSize { get; init; } = 0.03;

    /// <summary>Peak of the pair of toe and heel forces that turns the body.</summary>
    public double TwistSize { get; init; } = 0.16;

    /// <summary>When it peaks; the free moments of the feet peak around it.</summary>
    public double TwistTime { get; init; } = 0.07;

    /// <summary>Peak of the free moment under each foot, N.m.</summary>
    public double FreeMoment { get; init; } = 13;

    /// <summary>Sinking and pushing begin earlier (negative) or later by that time.</summary>
    public FootWork Shifted(double seconds) => this with { SinkTime = SinkTime + seconds, PushTime = PushTime + seconds };

    /// <summary>Vertical acceleration of the centre of mass.</summary>
    public PulseTrain Vertical => new(
        [new(-SinkSize, SinkTime, PushHalfTime), new(PushSize, PushTime, PushHalfTime)], (PushTime + 0.22, 0.16), (PushTime + 0.6, 0.2), 0.07);

    /// <summary>Acceleration of the centre of mass to the target: away in the backswing, to the target around top, braked around impact.</summary>
    public PulseTrain Target => new([new(-0.03, -0.6, 0.2), new(ShiftSize, ShiftTime, 0.19)], (ShiftTime + 0.28, 0.15), (ShiftTime + 0.7, 0.2), 0.12);

    /// <summary>Acceleration toward the toes.</summary>
    public PulseTrain Toe => new([new(ToeSize, -0.05, 0.15)], (0.18, 0.15), (0.6, 0.2), 0.01);

    /// <summary>Pair of toe and heel forces: against the turn in the backswing, with it in the downswing, braking afterwards.</summary>
    public IReadOnlyList<Pulse> Twist => [new(-0.3 * TwistSize, -0.55, 0.25), new(TwistSize, TwistTime, 0.13), new(-0.6 * TwistSize, 0.32, 0.16)];

    /// <summary>Free moment under the lead and the trail foot, as shares of <see cref="FreeMoment"/>.</summary>
    public (double Lead, double Trail) FreeShares(double time) =>
        (Pulses(time, TwistTime + 0.03, -0.3, 1, -0.5), Pulses(time, TwistTime - 0.03, -0.4, 1.1, -0.2));

    private static double Pulses(double time, double peak, double before, double with, double after) =>
        new Pulse(before, -0.5, 0.25).At(time) + new Pulse(with, peak, 0.14).At(time) + new Pulse(after, 0.33, 0.16).At(time);
}
