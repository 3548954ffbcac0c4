using SwingStudy.Motion.Geometry;
using SwingStudy.Motion.Tests.Support;

namespace SwingStudy.Pipeline.Tests.Laboratories;

/// <summary>The marks that cameras of a test follow.</summary>
internal static class Marks
{
    /// <summary>Their names as landmarks.</summary>
    public static IReadOnlyList<string> Names { get; } =
    [
        "club_head", "grip", "lead_wrist", "lead_elbow", "lead_shoulder", "trail_shoulder", "pelvis_front_lead", "pelvis_front_trail", "pelvis_back", "trail_hip", "trail_knee", "trail_ankle",
    ];

    /// <summary>Where one is.</summary>
    public static Vector3D Place(InventedSwing movement, string landmark, double time) => landmark switch
    {
        "club_head" => movement.Head(time),
        "grip" => movement.Grip(time),
        "lead_wrist" => movement.Wrist(time),
        "lead_elbow" => movement.Elbow(time),
        "lead_shoulder" => movement.LeadShoulderOfTrunk(time),
        "trail_shoulder" => movement.TrailShoulder(time),
        "pelvis_front_lead" => movement.Pelvis(time, 0.1, 0.12),
        "pelvis_front_trail" => movement.Pelvis(time, 0.1, -0.12),
        "pelvis_back" => movement.Pelvis(time, -0.1, 0),
        "trail_hip" => movement.Leg(time).Hip,
        "trail_knee" => movement.Leg(time).Knee,
        "trail_ankle" => movement.Leg(time).Ankle,
        _ => throw new ArgumentOutOfRangeException(nameof(landmark), landmark, "No such mark."),
    };
}
