using System.Text;
using SwingStudy.Ingestion.Tests.Readers.Workbook;
using static SwingStudy.Ingestion.Tests.Readers.Workbook.WorkbookFile;

namespace SwingStudy.Ingestion.Tests.Suggest;

/// <summary>An invented export and what each of its columns means: a variable, a role, or nothing ("-").</summary>
internal sealed record InventedLayout(string FileName, byte[] Bytes, IReadOnlyDictionary<string, string> Columns)
{
    /// <summary>Layouts, no two alike in language, format and layout.</summary>
    public static IReadOnlyList<InventedLayout> All { get; } =
    [
        Of(
            "messung_box3.csv",
            """
            Halle Nord;Box 3
            Bediener: niemand

            Lfd. Nr.;Spieler;Datum;Uhrzeit;Schläger;Schlägerkopfgeschw. [km/h];Ballgeschwindigkeit [km/h];Abflugwinkel [°];Spin gesamt [U/min];Fluglänge [m];Seitenabweichung [m];Luftdruck Reifen [bar];Bemerkung
            1;Anna;03.06.2026;09:15:02;Eisen 7;128,4;171,9;17,2;6012;131,5;-2,4;2,1;
            2;Anna;03.06.2026;09:16:11;Eisen 7;130,2;174,0;16,8;5880;133,9;1,1;2,1;Probeschwung
            3;Bert;03.06.2026;09:18:40;Eisen 7;119,9;---;---;---;---;---;2,1;getoppt, leider
            4;Bert;13.06.2026;09:19:55;Eisen 7;121,3;160,4;18,0;6230;121,0;4,0;2,1;
            Mittelwert;;;;;124,9;168,7;17,3;6041;128,8;0,9;2,1;
            """,
            "Lfd. Nr.=sequence Spieler=participant Datum=time Uhrzeit=time Schläger=club Schlägerkopfgeschw. [km/h]=club_head_speed Ballgeschwindigkeit [km/h]=ball_speed "
            + "Abflugwinkel [°]=launch_angle Spin gesamt [U/min]=spin_rate Fluglänge [m]=carry_distance Seitenabweichung [m]=side_distance Luftdruck Reifen [bar]=- Bemerkung=remark"),
        Of(
            "einheiten.csv",
            """
            Spieler;Zeitpunkt;Nr.;Schlägerkopfgeschwindigkeit;Ballgeschwindigkeit;Schwungweg;Launch Direction;Spinrate;Carry
            Anna;3. Juni 2026 09:15:02;1;98,4 mph;141,2 mph;3,5° R;1,2 L;3.450;231 m
            Anna;3. Juni 2026 09:16:11;2;97,1 mph;139,8 mph;2,5° L;0,4 R;3.120;228 m
            Bert;3. Juni 2026 09:18:40;1;91,9 mph;130,3 mph;0,5° R;2,2 L;2.980;204 m
            """,
            "Spieler=participant Zeitpunkt=time Nr.=sequence Schlägerkopfgeschwindigkeit=club_head_speed Ballgeschwindigkeit=ball_speed Schwungweg=club_path_angle Launch Direction=launch_direction "
            + "Spinrate=spin_rate Carry=carry_distance"),
        Of(
            "api_dump.csv",
            """
            player_name,shot_time,shot_id,club_speed_mph,ball_speed_mph,attack_angle_deg,launch_angle_deg,spin_rate_rpm,carry_yards,fw
            Ann,06/13/2026 02:05:06PM,1,98.4,141.2,-1.2,12.3,"3,450",231,2.0
            Ann,06/13/2026 02:06:11PM,2,97.1,139.8,-0.7,13.1,"3,120",228,2.0
            Bea,06/13/2026 02:09:40PM,1,91.9,130.3,1.3,14.9,"2,980",204,2.0
            """,
            "player_name=participant shot_time=time shot_id=sequence club_speed_mph=club_head_speed ball_speed_mph=ball_speed attack_angle_deg=attack_angle launch_angle_deg=launch_angle "
            + "spin_rate_rpm=spin_rate carry_yards=carry_distance fw=-"),
        Of(
            "pass.csv",
            """
            Spelare;Datum;Klockslag;Slag;Klubbhastighet (m/s);Bollhastighet (m/s);Attackvinkel (°);Utgångsvinkel (°);Spinn (varv/min);Längd i luften (m)
            Åsa;2026-06-03;14.05.06;1;41,25;58,10;-2,1;14,2;2950;201,5
            Åsa;2026-06-03;14.06.11;2;40,75;57,45;-1,4;13,8;3010;198,2
            Ola;2026-06-03;14.09.40;1;46,10;66,30;1,2;11,9;2610;231,7
            """,
            "Spelare=participant Datum=time Klockslag=time Slag=sequence Klubbhastighet (m/s)=club_head_speed Bollhastighet (m/s)=ball_speed Attackvinkel (°)=attack_angle Utgångsvinkel (°)=launch_angle "
            + "Spinn (varv/min)=spin_rate Längd i luften (m)=carry_distance"),
        Of(
            "seance.txt",
            """
            Essai	Élève	Horodatage	Vitesse club	Vitesse balle	Angle de décollage	Angle d'attaque	Portée	Remarques
            1	Noé	2026-06-03 14:02:10	39,2	52,4	17,5	-3,2	132	bon
            2	Noé	2026-06-03 14:03:01	40,1	53,9	16,9	-2,8	136	
            3	Noé	2026-06-03 14:04:22	38,7	51,8	18,3	-3,9	129	trop vite
            4	Léa	2026-06-03 14:06:00	31,5	42,0	19,2	-1,1	108	
            """,
            "Essai=sequence Élève=participant Horodatage=time Vitesse club=club_head_speed Vitesse balle=ball_speed Angle de décollage=launch_angle Angle d'attaque=attack_angle Portée=carry_distance Remarques=remark"),
        Of(
            "shots-2026.csv",
            """
            ,,Club,,,Ball,,,
            Shot,Recorded at,Speed,Path,Attack,Speed,Launch,Spin,Carry
            #,,mph,deg,deg,mph,deg,rpm,yd
            1,2026-06-03T10:00:00+02:00,92.1,1.4,-3.1,124.2,16.1,6100,165.0
            2,2026-06-03T10:01:00+02:00,93.4,2.0,-2.7,125.9,15.7,5950,168.2
            3,2026-06-03T10:02:00+02:00,91.8,0.6,-3.6,123.0,16.9,6240,163.1
            4,2026-06-03T10:03:00+02:00,94.0,1.1,-2.2,126.7,15.1,5890,170.4
            """,
            "Shot=sequence Recorded_at=time Club_Speed=club_head_speed Club_Path=club_path_angle Club_Attack=attack_angle Ball_Speed=ball_speed Ball_Launch=launch_angle Ball_Spin=spin_rate Ball_Carry=carry_distance",
            joinedBy: " "),
        Of(
            "long-export.csv",
            """
            subject,recorded_at,trial,metric,value,units
            S01,2026-06-03T08:00:00Z,1,Club head speed,41.2,m/s
            S01,2026-06-03T08:00:00Z,1,Ball speed,55.1,m/s
            S01,2026-06-03T08:00:00Z,1,Spin rate,5980,rpm
            S01,2026-06-03T08:01:10Z,2,Club head speed,41.9,m/s
            S01,2026-06-03T08:01:10Z,2,Ball speed,56.0,m/s
            S01,2026-06-03T08:01:10Z,2,Spin rate,6105,rpm
            S02,2026-06-03T08:05:00Z,1,Club head speed,36.0,m/s
            S02,2026-06-03T08:05:00Z,1,Ball speed,48.3,m/s
            S02,2026-06-03T08:05:00Z,1,Carry length,121,m
            """,
            "subject=participant recorded_at=time trial=sequence metric=long.name value=long.value units=long.unit Club head speed=club_head_speed Ball speed=ball_speed Spin rate=spin_rate Carry length=carry_distance"),
        Of(
            "bay-api.json",
            """
            {"bay":2,"session":{"player":"hidden","shots":[
             {"id":"a1","when":"2026-06-03T10:00:00+01:00","player":"Kim","seq":1,"club":{"headSpeed":42.1,"attackAngle":-2.9,"path":1.2},"ball":{"speed":56.9,"launchAngle":15.9,"spinRate":5800,"spinAxis":-2.1},"firmware":"1.2"},
             {"id":"a2","when":"2026-06-03T10:01:00+01:00","player":"Kim","seq":2,"club":{"headSpeed":41.8,"attackAngle":-3.3,"path":0.4},"ball":{"speed":56.2,"launchAngle":16.4,"spinRate":6020,"spinAxis":1.0},"firmware":"1.2"},
             {"id":"a3","when":"2026-06-03T10:02:10+01:00","player":"Kim","seq":3,"club":{"headSpeed":42.9,"attackAngle":-2.5,"path":0.9},"ball":{"speed":57.7,"launchAngle":15.2,"spinRate":5760,"spinAxis":0.3},"firmware":"1.2"}]}}
            """,
            "id=- when=time player=participant seq=sequence club.headSpeed=club_head_speed club.attackAngle=attack_angle club.path=club_path_angle ball.speed=ball_speed ball.launchAngle=launch_angle ball.spinRate=spin_rate ball.spinAxis=spin_axis_tilt firmware=-"),
        Of(
            "ring.ndjson",
            string.Concat(Enumerable.Range(0, 60).Select(i => $"{{\"t_unix_ms\":{1780480000000 + (i * 250)},\"user\":\"Kim\",\"attention\":{40 + (i % 20)},\"battery\":{90 - (i / 20)}}}\n")),
            "t_unix_ms=time user=participant attention=attention_level battery=-"),
        Of(
            "plates_20260603.csv",
            """
            Exported by: plate software of the house
            Athlete: Kim
            Trial|Time|Peak vertical force (N/kg?)|Body weight [N]|Lead share top [%]|Lead share impact [%]|Unweighting|COP range (mm)|Loading rate
            1|10:00:01.250|2.1|712.4|28|81|0.62|182|21.5
            2|10:01:02.000|2.0|712.4|31|79|0.66|175|19.8
            3|10:02:12.750|2.2|712.4|27|84|0.59|190|23.0
            """,
            "Trial=sequence Time=time Peak vertical force (N/kg?)=- Body weight [N]=body_weight Lead share top [%]=lead_share_top Lead share impact [%]=lead_share_impact Unweighting=unweight_min_total "
            + "COP range (mm)=cop_along_range Loading rate=vertical_loading_rate_lead"),
        new(
            "log.xlsx",
            new WorkbookFile().Sheet("Read me", Texts("How to fill in this log")).Sheet(
                "Log",
                Texts("Coach's log of an invented academy"),
                Texts("Day", "Start", "Player", "Phase", "Club", "Surface", "Planned swings", "Warm-up", "Temp (°C)", "Wind (km/h)", "Coach note", "Paid"),
                [Date("46176"), Time("0.4166666667"), Text("Kim"), Text("baseline"), Text("mid iron"), Text("mat"), Number("20"), Number("10"), Number("18.5"), Number("9"), Text("calm"), Text("yes")],
                [Date("46183"), Time("0.4236111111"), Text("Kim"), Text("cue"), Text("mid iron"), Text("mat"), Number("20"), Number("12"), Number("19"), Number("12"), Text("tired"), Text("yes")],
                [Date("46184"), Time("0.4375"), Text("Noé"), Text("baseline"), Text("driver"), Text("grass"), Number("15"), Number("10"), Number("21"), Number("7"), Text("late"), Text("no")]).Bytes(),
            Expected("Day=time Start=time Player=participant Phase=phase Club=club Surface=surface Planned swings=planned_swings Warm-up=warmup_swings Temp (°C)=air_temperature Wind (km/h)=wind_speed Coach note=note Paid=-")),
        Of(
            "radar export.csv",
            """
            "Export","3 June 2026"
            "Golfer","Swing #","Date","Time","Clubhead Spd (mph)","Ball Spd (mph)","Smash*","Launch Ang (deg)","Launch Dir (deg)","Back-Spin (rpm)","Carry Dist (yds)","Serial"
            "Kim","1","06/13/2026","9:05:10 AM","88.1","118.9","1.35","17.3","-0.4","5930","158.2","X-0012"
            "Kim","2","06/13/2026","9:06:04 AM","89.0","120.1","1.35","16.9","0.9","6011","160.0","X-0012"
            "Kim","3","06/13/2026","9:07:59 AM","87.2","-9999","-9999","-9999","-9999","-9999","-9999","X-0012"
            "Kim","4","06/13/2026","9:09:30 AM","88.8","119.7","1.35","17.0","1.5","5898","159.1","X-0012"
            "Average","","","","88.3","119.6","1.35","17.1","0.7","5946","159.1",""
            """,
            "Golfer=participant Swing #=sequence Date=time Time=time Clubhead Spd (mph)=club_head_speed Ball Spd (mph)=ball_speed Smash*=- Launch Ang (deg)=launch_angle Launch Dir (deg)=launch_direction "
            + "Back-Spin (rpm)=spin_rate Carry Dist (yds)=carry_distance Serial=-"),
        Of(
            "captura.csv",
            """
            Golpe;Jugador;Fecha;Hora;Palo;Velocidad palo (mph);Velocidad bola (mph);Ángulo de ataque (grados);Trayectoria palo (grados);Efecto (rpm);Vuelo (yd);Desviación (yd);Comentario
            1;Iria;13/06/2026;17:01:05;hierro 7;84,1;112,9;-3,3;1,8;6120;149,2;-3,1;
            2;Iria;13/06/2026;17:02:09;hierro 7;85,6;115,0;-2,9;2,2;6044;152,7;2,2;sin bola
            3;Iria;13/06/2026;17:03:40;hierro 7;83,9;112,1;-3,8;1,0;6301;147,9;5,0;
            """,
            "Golpe=sequence Jugador=participant Fecha=time Hora=time Palo=club Velocidad palo (mph)=club_head_speed Velocidad bola (mph)=ball_speed Ángulo de ataque (grados)=attack_angle "
            + "Trayectoria palo (grados)=club_path_angle Efecto (rpm)=spin_rate Vuelo (yd)=carry_distance Desviación (yd)=side_distance Comentario=remark"),
    ];

    private static InventedLayout Of(string name, string text, string expected, string? joinedBy = null)
    {
        var columns = Expected(expected);
        return new(
            name,
            Encoding.UTF8.GetBytes(text.ReplaceLineEndings("\n")),
            joinedBy is null ? columns : columns.ToDictionary(pair => pair.Key.Replace("_", joinedBy, StringComparison.Ordinal), pair => pair.Value));
    }

    /// <summary>Headings may hold blanks: a pair ends where the word behind "=" ends.</summary>
    private static Dictionary<string, string> Expected(string text)
    {
        var pairs = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var part in System.Text.RegularExpressions.Regex.Matches(text, @"(?<heading>.+?)=(?<meaning>\S+)(?: |$)").AsEnumerable())
            pairs[part.Groups["heading"].Value] = part.Groups["meaning"].Value;
        return pairs;
    }
}
