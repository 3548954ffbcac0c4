using System.Text.Json.Serialization;

namespace SwingStudy.Domain.Sources;

/// <summary>Where a force plate lies in the laboratory (x to the target, y up, z to the right facing the target), lengths in metres.</summary>
[JsonNumberHandling(JsonNumberHandling.AllowNamedFloatingPointLiterals)]
public sealed record PlateGeometry
{
    /// <summary>Centre of the plate's top, along the target line; NaN when it is not declared.</summary>
    public double CentreXM { get; init; } = double.NaN;

    /// <summary>Height of the plate's top.</summary>
    public double CentreYM { get; init; }

    /// <summary>Centre of the plate's top, across the target line; NaN when it is not declared.</summary>
    public double CentreZM { get; init; } = double.NaN;

    /// <summary>How far the origin of forces and moments lies below the top's centre.</summary>
    public double DepthM { get; init; }

    /// <summary>How far the origin of forces and moments lies from below the top's centre to the target, before the plate is turned.</summary>
    public double OriginXM { get; init; }

    /// <summary>How far it lies from there to the right.</summary>
    public double OriginZM { get; init; }

    /// <summary>Thickness of a mat on the plate: the player stands that much higher.</summary>
    public double MatM { get; init; }

    /// <summary>Size along the target line; NaN when it is not declared.</summary>
    public double SizeXM { get; init; } = double.NaN;

    /// <summary>Size across the target line; NaN when it is not declared.</summary>
    public double SizeZM { get; init; } = double.NaN;

    /// <summary>Turn of the plate's own axes against the laboratory's about the vertical, degrees, right-handed about up; curves are stored turned back.</summary>
    public double TurnDeg { get; init; }

    /// <summary>Number of the force platform in a C3D file, from 1; null for other formats.</summary>
    public int? Platform { get; init; }
}
