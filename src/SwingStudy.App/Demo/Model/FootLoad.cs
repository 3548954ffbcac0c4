namespace SwingStudy.App.Demo.Model;

/// <summary>What the ground does to one foot, in the laboratory.</summary>
/// <param name="Force">Reaction on the player, N.</param>
/// <param name="Pressure">Centre of pressure on the ground, m.</param>
/// <param name="FreeMoment">Moment about the vertical through it, N.m.</param>
internal readonly record struct FootLoad(Point3 Force, Point3 Pressure, double FreeMoment)
{
    /// <summary>Moment about a point, N.m.</summary>
    public Point3 MomentAbout(Point3 point) => (Pressure - point).Cross(Force) + new Point3(0, FreeMoment, 0);
}
