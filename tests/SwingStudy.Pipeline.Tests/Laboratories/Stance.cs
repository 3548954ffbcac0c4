using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Tests.Support;

namespace SwingStudy.Pipeline.Tests.Laboratories;

/// <summary>What an invented player does to the ground: force, place of pressure and free moment of each foot are known at every moment, impact being zero.</summary>
internal sealed record Stance
{
    public const double WeightN = 780;

    private const double HalfWidth = 0.24;

    /// <summary>+1 right-handed, −1 left-handed: everything in a mirror along the target line.</summary>
    public int Side { get; init; } = 1;

    /// <summary>Height of what the player stands on.</summary>
    public double GroundY { get; init; }

    private static readonly Func<double, double> Vertical = Quintic.Chain(
        new Quintic(-0.8, -0.2, (1, 0, 0), (0.8, 0, 20)), new Quintic(-0.2, -0.05, (0.8, 0, 20), (1.6, 0, -60)), new Quintic(-0.05, 0.35, (1.6, 0, -60), (1, 0, 0)));

    private static readonly Func<double, double> Share = Quintic.Chain(
        new Quintic(-1.1, -0.27, (0.5, 0, 0), (0.25, 0, 0)), new Quintic(-0.27, 0.1, (0.25, 0, 0), (0.85, 0, 0)));

    private static readonly Func<double, double> Along = Quintic.Chain(new Quintic(-1, -0.3, (0, 0, 0), (-0.05, 0, 0)), new Quintic(-0.3, -0.02, (-0.05, 0, 0), (0.18, 0, -20)), new Quintic(-0.02, 0.3, (0.18, 0, -20), (-0.02, 0, 0)));

    private static readonly Func<double, double> Turning = Quintic.Chain(new Quintic(-0.9, -0.3, (0, 0, 0), (-6, 0, 0)), new Quintic(-0.3, -0.06, (-6, 0, 0), (22, 0, -1000)), new Quintic(-0.06, 0.3, (22, 0, -1000), (0, 0, 0)));

    /// <summary>Force, place of pressure and moment about up of one foot.</summary>
    public (Vector3D Force, Vector3D Place, double FreeMoment) Foot(string foot, double time)
    {
        var (isLead, lead) = (foot == "lead", Share(time));
        var force = WeightN * Vertical(time) * (isLead ? lead : 1 - lead);
        var along = (isLead ? 0.6 : 1.3) * Along(time);
        var across = isLead ? -0.2 * Along(time) : 0.35 * Along(time);
        var place = new Vector3D((isLead ? HalfWidth : -HalfWidth) + (0.15 * Along(time)), GroundY, Side * (-0.82 + (isLead ? 0.04 : -0.03) + (0.2 * Along(time))));
        return (force * new Vector3D(along, 1, Side * across), place, Side * (isLead ? 1 : 0.7) * Turning(time));
    }

    /// <summary>Common place of pressure and the moment about up through it.</summary>
    public (double Along, double Across, double Pivot) Both(double time)
    {
        var feet = new[] { Foot("lead", time), Foot("trail", time) };
        var vertical = feet.Sum(foot => foot.Force.Y);
        var place = (1 / vertical) * ((feet[0].Force.Y * feet[0].Place) + (feet[1].Force.Y * feet[1].Place));
        return (place.X, place.Z, feet.Sum(foot => foot.FreeMoment + (foot.Place - place).Cross(foot.Force).Y));
    }
}
