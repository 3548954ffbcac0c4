namespace SwingStudy.App.Demo.Model;

/// <summary>An invented club as a rigid body that turns about the hands.</summary>
/// <param name="Length">From the middle of the hands to the head, m.</param>
/// <param name="FirstMoment">Mass times distance of its balance point from the hands, kg.m.</param>
/// <param name="Inertia">Moment of inertia about the hands, kg.m².</param>
/// <param name="Plane">Slope of the plane of the swing against the ground, degrees.</param>
/// <param name="SpeedKept">Share of the club's turn that is left after it hits a ball.</param>
internal sealed record Club(double Length, double FirstMoment, double Inertia, double Plane, double SpeedKept)
{
    /// <summary>A mid iron: 0.42 kg, balanced 0.70 m below the hands.</summary>
    public static Club MidIron { get; } = new(0.88, 0.294, 0.25, 58, 0.80);

    /// <summary>A driver: 0.31 kg, balanced 0.76 m below the hands.</summary>
    public static Club Driver { get; } = new(1.01, 0.2356, 0.229, 50, 0.76);
}
