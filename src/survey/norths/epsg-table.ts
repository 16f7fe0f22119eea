/**
 * Projected systems of the EPSG register, made by .ci/epsg-table.mjs: not edited by hand. One line a system or a run of them,
 * `first code[xcount]|name|proj`; `{first:step}` is a number that grows by a step with each code of the run, and `@n` the
 * n-th line of the datums, from 0.
 *
 * SHA-256 of all below this comment: 825c88ddb2a3002d974f5d97ea765248ea0da24e1b350f400b7e98c9826f37cf
 */
export const EPSG_TABLE = `2040|Locodjo 1965 / UTM zone 30N|+proj=utm +zone=30 @0
2041|Abidjan 1987 / UTM zone 30N|+proj=utm +zone=30 @1
2042|Locodjo 1965 / UTM zone 29N|+proj=utm +zone=29 @0
2043|Abidjan 1987 / UTM zone 29N|+proj=utm +zone=29 @1
2044x2|Hanoi 1972 / Gauss-Kruger zone {18:1}|+proj=tmerc +lon_0={105:6} +k=1 +x_0={18500000:1000000} @2
2048x7|Hartebeesthoek94 / Lo{19:2}|+proj=tmerc +axis=wsu +lon_0={19:2} +k=1 @3
2056|CH1903+ / LV95|+proj=somerc +lat_0=46.9524055555556 +lon_0=7.43958333333333 +k_0=1 +x_0=2600000 +y_0=1200000 @4
2058x4|ED50(ED77) / UTM zone {38:1}N|+proj=utm +zone={38:1} @5
2062|Madrid 1870 (Madrid) / Spain LCC|+proj=lcc +lat_1=40 +lat_0=40 +lon_0=0 +k_0=0.9988085293 +x_0=600000 +y_0=600000 @6
2065|S-JTSK (Ferro) / Krovak|+proj=krovak +axis=swu +lat_0=49.5 +lon_0=42.5 +alpha=30.2881397527778 +k=0.9999 +x_0=0 +y_0=0 @7
2069x8|ELD79 / Libya zone {6:1}|+proj=tmerc +lon_0={11:2} +k=0.9999 +x_0=200000 @8
2077x4|ELD79 / UTM zone {32:1}N|+proj=utm +zone={32:1} @8
2081|Chos Malal 1914 / Argentina 2|+proj=tmerc +lat_0=-90 +lon_0=-69 +k=1 +x_0=2500000 @9
2082|Pampa del Castillo / Argentina 2|+proj=tmerc +lat_0=-90 +lon_0=-69 +k=1 +x_0=2500000 @10
2087|ELD79 / TM 12 NE|+proj=tmerc +lon_0=12 +k=0.9996 +x_0=500000 @8
2088|Carthage / TM 11 NE|+proj=tmerc +lon_0=11 +k=0.9996 +x_0=500000 @11
2089x2|Yemen NGN96 / UTM zone {38:1}N|+proj=utm +zone={38:1} @3
2097|Korean 1985 / Central Belt|+proj=tmerc +lat_0=38 +lon_0=127 +k=1 +x_0=200000 +y_0=500000 @12
2100|GGRS87 / Greek Grid|+proj=tmerc +lon_0=24 +k=0.9996 +x_0=500000 @13
2105|NZGD2000 / Mount Eden 2000|+proj=tmerc +lat_0=-36.8797222222222 +lon_0=174.764166666667 +k=0.9999 +x_0=400000 +y_0=800000 @14
2133x3|NZGD2000 / UTM zone {58:1}S|+proj=utm +zone={58:1} +south @14
2137|Accra / TM 1 NW|+proj=tmerc +lon_0=-1 +k=0.9996 +x_0=500000 @15
2154|RGF93 v1 / Lambert-93|+proj=lcc +lat_0=46.5 +lon_0=3 +lat_1=49 +lat_2=44 +x_0=700000 +y_0=6600000 @14
2157|IRENET95 / Irish Transverse Mercator|+proj=tmerc +lat_0=53.5 +lon_0=-8 +k=0.99982 +x_0=600000 +y_0=750000 @14
2158|IRENET95 / UTM zone 29N|+proj=utm +zone=29 @14
2164|Locodjo 1965 / TM 5 NW|+proj=tmerc +lon_0=-5 +k=0.9996 +x_0=500000 @0
2165|Abidjan 1987 / TM 5 NW|+proj=tmerc +lon_0=-5 +k=0.9996 +x_0=500000 @1
2172|Pulkovo 1942(58) / Poland zone II|+proj=sterea +lat_0=53.0019444444444 +lon_0=21.5027777777778 +k=0.9998 +x_0=4603000 +y_0=5806000 @16
2173|Pulkovo 1942(58) / Poland zone III|+proj=sterea +lat_0=53.5833333333333 +lon_0=17.0083333333333 +k=0.9998 +x_0=3501000 +y_0=5999000 @16
2174|Pulkovo 1942(58) / Poland zone IV|+proj=sterea +lat_0=51.6708333333333 +lon_0=16.6722222222222 +k=0.9998 +x_0=3703000 +y_0=5627000 @16
2180|ETRF2000-PL / CS92|+proj=tmerc +lon_0=19 +k=0.9993 +x_0=500000 +y_0=-5300000 @14
2193|NZGD2000 / New Zealand Transverse Mercator 2000|+proj=tmerc +lon_0=173 +k=0.9996 +x_0=1600000 +y_0=10000000 @14
2196|ETRS89 / Kp2000 Jutland|+proj=tmerc +lon_0=9.5 +k=0.99995 +x_0=200000 @14
2202x2|REGVEN / UTM zone {19:1}N|+proj=utm +zone={19:1} @14
2206x6|ED50 / 3-degree Gauss-Kruger zone {9:1}|+proj=tmerc +lon_0={27:3} +k=1 +x_0={9500000:1000000} @17
2216x2|Qornoq 1927 / UTM zone {22:1}N|+proj=utm +zone={22:1} @18
2308|Batavia / TM 109 SE|+proj=tmerc +lon_0=109 +k=0.9996 +x_0=500000 +y_0=10000000 @19
2311|WGS 84 / TM 6 NE|+proj=tmerc +lon_0=6 +k=0.9996 +x_0=500000 @20
2316|Campo Inchauspe / UTM zone 20S|+proj=utm +zone=20 +south @21
2317|PSAD56 / ICN Regional|+proj=lcc +lat_0=6 +lon_0=-66 +lat_1=9 +lat_2=3 +x_0=1000000 +y_0=1000000 @22
2318|Ain el Abd / Aramco Lambert|+proj=lcc +lat_0=25.08951 +lon_0=48 +lat_1=17 +lat_2=33 +x_0=0 +y_0=0 @23
2319x6|ED50 / TM{27:3}|+proj=tmerc +lon_0={27:3} +k=1 +x_0=500000 @17
2327x11|Xian 1980 / Gauss-Kruger zone {13:1}|+proj=tmerc +lon_0={75:6} +k=1 +x_0={13500000:1000000} @24
2349x20|Xian 1980 / 3-degree Gauss-Kruger zone {25:1}|+proj=tmerc +lon_0={75:3} +k=1 +x_0={25500000:1000000} @24
2391x2|KKJ / Finland zone {1:1}|+proj=tmerc +lon_0={21:3} +k=1 +x_0={1500000:1000000} @25
2393|KKJ / Finland Uniform Coordinate System|+proj=tmerc +lon_0=27 +k=1 +x_0=3500000 @25
2394|KKJ / Finland zone 4|+proj=tmerc +lon_0=30 +k=1 +x_0=4500000 @25
2395x2|South Yemen / Gauss-Kruger zone {8:1}|+proj=tmerc +lon_0={45:6} +k=1 +x_0={8500000:1000000} @26
2398x2|Pulkovo 1942(83) / 3-degree Gauss-Kruger zone {4:1}|+proj=tmerc +lon_0={12:3} +k=1 +x_0={4500000:1000000} @27
2401x20|Beijing 1954 / 3-degree Gauss-Kruger zone {25:1}|+proj=tmerc +lon_0={75:3} +k=1 +x_0={25500000:1000000} @28
2443|JGD2000 / Japan Plane Rectangular CS I|+proj=tmerc +lat_0=33 +lon_0=129.5 +k=0.9999 @14
2444|JGD2000 / Japan Plane Rectangular CS II|+proj=tmerc +lat_0=33 +lon_0=131 +k=0.9999 @14
2450|JGD2000 / Japan Plane Rectangular CS VIII|+proj=tmerc +lat_0=36 +lon_0=138.5 +k=0.9999 @14
2451|JGD2000 / Japan Plane Rectangular CS IX|+proj=tmerc +lat_0=36 +lon_0=139.833333333333 +k=0.9999 @14
2452|JGD2000 / Japan Plane Rectangular CS X|+proj=tmerc +lat_0=40 +lon_0=140.833333333333 +k=0.9999 @14
2454|JGD2000 / Japan Plane Rectangular CS XII|+proj=tmerc +lat_0=44 +lon_0=142.25 +k=0.9999 @14
2455|JGD2000 / Japan Plane Rectangular CS XIII|+proj=tmerc +lat_0=44 +lon_0=144.25 +k=0.9999 @14
2523x27|Pulkovo 1942 / 3-degree Gauss-Kruger zone {7:1}|+proj=tmerc +lon_0={21:3} +k=1 +x_0={7500000:1000000} @29
2551x26|Pulkovo 1942 / 3-degree Gauss-Kruger zone {34:1}|+proj=tmerc +lon_0={102:3} +k=1 +x_0={34500000:1000000} @29
2578x2|Pulkovo 1942 / 3-degree Gauss-Kruger zone {61:1}|+proj=tmerc +lon_0=-{177:-3} +k=1 +x_0={61500000:1000000} @29
2643x51|Pulkovo 1995 / 3-degree Gauss-Kruger zone {9:1}|+proj=tmerc +lon_0={27:3} +k=1 +x_0={9500000:1000000} @30
2695x2|Pulkovo 1995 / 3-degree Gauss-Kruger zone {61:1}|+proj=tmerc +lon_0=-{177:-3} +k=1 +x_0={61500000:1000000} @30
2736x2|Tete / UTM zone {36:1}S|+proj=utm +zone={36:1} +south @31
2931|Beduaram / TM 13 NE|+proj=tmerc +lon_0=13 +k=0.9996 +x_0=500000 @32
2945x8|NAD83(CSRS) / MTM zone {3:1}|+proj=tmerc +lon_0=-{58.5:3} +k=0.9999 +x_0=304800 @33
2953|NAD83(CSRS) / New Brunswick Stereographic|+proj=sterea +lat_0=46.5 +lon_0=-66.5 +k=0.999912 +x_0=2500000 +y_0=7500000 @33
2955x3|NAD83(CSRS) / UTM zone {11:1}N|+proj=utm +zone={11:1} @33
2958x5|NAD83(CSRS) / UTM zone {17:1}N|+proj=utm +zone={17:1} @33
2972|RGFG95 / UTM zone 22N|+proj=utm +zone=22 @14
2975|RGR92 / UTM zone 40S|+proj=utm +zone=40 +south @14
3003x2|Monte Mario / Italy zone {1:1}|+proj=tmerc +lon_0={9:6} +k=0.9996 +x_0={1500000:1020000} @34
3006|SWEREF99 TM|+proj=utm +zone=33 @14
3008|SWEREF99 13 30|+proj=tmerc +lon_0=13.5 +k=1 +x_0=150000 @14
3009|SWEREF99 15 00|+proj=tmerc +lon_0=15 +k=1 +x_0=150000 @14
3010|SWEREF99 16 30|+proj=tmerc +lon_0=16.5 +k=1 +x_0=150000 @14
3012x2|SWEREF99 {14:1} {15:30}|+proj=tmerc +lon_0={14.25:1.5} +k=1 +x_0=150000 @14
3014x2|SWEREF99 {17:1} {15:30}|+proj=tmerc +lon_0={17.25:1.5} +k=1 +x_0=150000 @14
3016|SWEREF99 20 15|+proj=tmerc +lon_0=20.25 +k=1 +x_0=150000 @14
3020x2|RT90 {5:-2.5} gon V|+proj=tmerc +lon_0={13.5582777777778:2.25} +k=1 +x_0=1500000 @35
3022|RT90 0 gon|+proj=tmerc +lon_0=18.0582777777778 +k=1 +x_0=1500000 @35
3023x2|RT90 {2.5:2.5} gon O|+proj=tmerc +lon_0={20.3082777777778:2.25} +k=1 +x_0=1500000 @35
3026x2|RT38 {5:-2.5} gon V|+proj=tmerc +lon_0={13.5582777777778:2.25} +k=1 +x_0=1500000 @36
3028|RT38 0 gon|+proj=tmerc +lon_0=18.0582777777778 +k=1 +x_0=1500000 @36
3029x2|RT38 {2.5:2.5} gon O|+proj=tmerc +lon_0={20.3082777777778:2.25} +k=1 +x_0=1500000 @36
3036x2|Moznet / UTM zone {36:1}S|+proj=utm +zone={36:1} +south @3
3055x2|Hjorsey 1955 / UTM zone {27:1}N|+proj=utm +zone={27:1} @37
3057|ISN93 / Lambert 1993|+proj=lcc +lat_0=65 +lon_0=-19 +lat_1=64.25 +lat_2=65.75 +x_0=500000 +y_0=500000 @14
3059|LKS92 / Latvia TM|+proj=tmerc +lon_0=24 +k=0.9996 +x_0=500000 +y_0=-6000000 @14
3064x2|IGM95 / UTM zone {32:1}N|+proj=utm +zone={32:1} @14
3066|ED50 / Jordan TM|+proj=tmerc +lon_0=37 +k=0.9998 +x_0=500000 +y_0=-3000000 @17
3067|ETRS89 / TM35FIN(E,N)|+proj=utm +zone=35 @14
3093x3|Tokyo / UTM zone {52:1}N|+proj=utm +zone={52:1} @38
3097x5|JGD2000 / UTM zone {51:1}N|+proj=utm +zone={51:1} @14
3106|Gulshan 303 / TM 90 NE|+proj=tmerc +lon_0=90 +k=0.9996 +x_0=500000 @39
3107|GDA94 / SA Lambert|+proj=lcc +lat_0=-32 +lon_0=135 +lat_1=-28 +lat_2=-36 +x_0=1000000 +y_0=2000000 @14
3110|AGD66 / Vicgrid66|+proj=lcc +lat_0=-37 +lon_0=145 +lat_1=-36 +lat_2=-38 +x_0=2500000 +y_0=4500000 @40
3111|GDA94 / Vicgrid|+proj=lcc +lat_0=-37 +lon_0=145 +lat_1=-36 +lat_2=-38 +x_0=2500000 +y_0=2500000 @14
3112|GDA94 / Geoscience Australia Lambert|+proj=lcc +lat_0=0 +lon_0=134 +lat_1=-18 +lat_2=-36 +x_0=0 +y_0=0 @14
3115|MAGNA-SIRGAS / Colombia West zone|+proj=tmerc +lat_0=4.59620041666667 +lon_0=-77.0775079166667 +k=1 +x_0=1000000 +y_0=1000000 @14
3116|MAGNA-SIRGAS / Colombia Bogota zone|+proj=tmerc +lat_0=4.59620041666667 +lon_0=-74.0775079166667 +k=1 +x_0=1000000 +y_0=1000000 @14
3117|MAGNA-SIRGAS / Colombia East Central zone|+proj=tmerc +lat_0=4.59620041666667 +lon_0=-71.0775079166667 +k=1 +x_0=1000000 +y_0=1000000 @14
3118|MAGNA-SIRGAS / Colombia East zone|+proj=tmerc +lat_0=4.59620041666667 +lon_0=-68.0775079166667 +k=1 +x_0=1000000 +y_0=1000000 @14
3120|Pulkovo 1942(58) / Poland zone I|+proj=sterea +lat_0=50.625 +lon_0=21.0833333333333 +k=0.9998 +x_0=4637000 +y_0=5467000 @16
3121x5|PRS92 / Philippines zone {1:1}|+proj=tmerc +lon_0={117:2} +k=0.99995 +x_0=500000 @41
3128x9|ETRS89 / ETRS-GK{21:1}FIN|+proj=tmerc +lon_0={21:1} +k=1 +x_0=500000 @14
3141|Fiji 1956 / UTM zone 60S|+proj=utm +zone=60 +south @42
3148x2|Indian 1960 / UTM zone {48:1}N|+proj=utm +zone={48:1} @43
3154x4|NAD83(CSRS) / UTM zone {7:1}N|+proj=utm +zone={7:1} @33
3158x3|NAD83(CSRS) / UTM zone {14:1}N|+proj=utm +zone={14:1} @33
3161|NAD83 / Ontario MNR Lambert|+proj=lcc +lat_0=0 +lon_0=-85 +lat_1=44.5 +lat_2=53.5 +x_0=930000 +y_0=6430000 @14
3162|NAD83(CSRS) / Ontario MNR Lambert|+proj=lcc +lat_0=0 +lon_0=-85 +lat_1=44.5 +lat_2=53.5 +x_0=930000 +y_0=6430000 @33
3163|RGNC91-93 / Lambert New Caledonia|+proj=lcc +lat_0=-21.5 +lon_0=166 +lat_1=-20.6666666666667 +lat_2=-22.3333333333333 +x_0=400000 +y_0=300000 @14
3168|Kertau (RSO) / RSO Malaya (m)|+proj=omerc +no_uoff +lat_0=4 +lonc=102.25 +alpha=323.0257905 +gamma=323.130102361111 +k=0.99984 +x_0=804670.24 +y_0=0 @44
3169x3|RGNC91-93 / UTM zone {57:1}S|+proj=utm +zone={57:1} +south @14
3176|Indian 1960 / TM 106 NE|+proj=tmerc +lon_0=106 +k=0.9996 +x_0=500000 @43
3177|LGD2006 / Libya TM|+proj=tmerc +lon_0=17 +k=0.9965 +x_0=1000000 @45
3178x12|GR96 / UTM zone {18:1}N|+proj=utm +zone={18:1} @14
3191x8|LGD2006 / Libya TM zone {6:1}|+proj=tmerc +lon_0={11:2} +k=0.99995 +x_0=200000 @45
3199|LGD2006 / UTM zone 32N|+proj=utm +zone=32 @45
3200|FD58 / Iraq zone|+proj=lcc +lat_1=32.5 +lat_0=32.5 +lon_0=45 +k_0=0.9987864078 +x_0=1500000 +y_0=1166200 @46
3201x3|LGD2006 / UTM zone {33:1}N|+proj=utm +zone={33:1} @45
3294|WGS 84 / USGS Transantarctic Mountains|+proj=lcc +lat_0=-78 +lon_0=162 +lat_1=-76.6666666666667 +lat_2=-79.3333333333333 +x_0=0 +y_0=0 @20
3296x4|RGPF / UTM zone {5:1}S|+proj=utm +zone={5:1} +south @47
3300|Estonian Coordinate System of 1992|+proj=lcc +lat_0=57.5175539305556 +lon_0=24 +lat_1=59.3333333333333 +lat_2=58 +x_0=500000 +y_0=6375000 @48
3301|Estonian Coordinate System of 1997|+proj=lcc +lat_0=57.5175539305556 +lon_0=24 +lat_1=59.3333333333333 +lat_2=58 +x_0=500000 +y_0=6375000 @14
3308|GDA94 / NSW Lambert|+proj=lcc +lat_0=-33.25 +lon_0=147 +lat_1=-30.75 +lat_2=-35.75 +x_0=9300000 +y_0=4500000 @14
3328|Pulkovo 1942(58) / GUGiK-80|+proj=sterea +lat_0=52.1666666666667 +lon_0=19.1666666666667 +k=0.999714 +x_0=500000 +y_0=500000 @16
3329x4|Pulkovo 1942(58) / 3-degree Gauss-Kruger zone {5:1}|+proj=tmerc +lon_0={15:3} +k=1 +x_0={5500000:1000000} @16
3333x3|Pulkovo 1942(58) / Gauss-Kruger zone {3:1}|+proj=tmerc +lon_0={15:6} +k=1 +x_0={3500000:1000000} @16
3343x3|Mauritania 1999 / UTM zone {28:1}N|+proj=utm +zone={28:1} @14
3346|LKS94 / Lithuania TM|+proj=tmerc +lon_0=24 +k=0.9998 +x_0=500000 @14
3347|NAD83 / Statistics Canada Lambert|+proj=lcc +lat_0=63.390675 +lon_0=-91.8666666666667 +lat_1=49 +lat_2=77 +x_0=6200000 +y_0=3000000 @14
3348|NAD83(CSRS) / Statistics Canada Lambert|+proj=lcc +lat_0=63.390675 +lon_0=-91.8666666666667 +lat_1=49 +lat_2=77 +x_0=6200000 +y_0=3000000 @33
3367x3|IGN Astro 1960 / UTM zone {28:1}N|+proj=utm +zone={28:1} @49
3372x2|NAD83 / UTM zone {59:1}N|+proj=utm +zone={59:1} @14
3375|GDM2000 / Peninsula RSO|+proj=omerc +no_uoff +lat_0=4 +lonc=102.25 +alpha=323.025796466667 +gamma=323.130102361111 +k=0.99984 +x_0=804671 +y_0=0 @14
3376|GDM2000 / East Malaysia BRSO|+proj=omerc +no_uoff +lat_0=4 +lonc=115 +alpha=53.31580995 +gamma=53.1301023611111 +k=0.99984 +x_0=0 +y_0=0 @14
3389|Pulkovo 1942 / 3-degree Gauss-Kruger zone 60|+proj=tmerc +lon_0=180 +k=1 +x_0=60500000 @29
3390|Pulkovo 1995 / 3-degree Gauss-Kruger zone 60|+proj=tmerc +lon_0=180 +k=1 +x_0=60500000 @30
3391x2|Karbala 1979 / UTM zone {37:1}N|+proj=utm +zone={37:1} @50
3394|Nahrwan 1934 / Iraq zone|+proj=lcc +lat_1=32.5 +lat_0=32.5 +lon_0=45 +k_0=0.9987864078 +x_0=1500000 +y_0=1166200 @51
3400|NAD83 / Alberta 10-TM (Forest)|+proj=tmerc +lon_0=-115 +k=0.9992 +x_0=500000 @14
3401|NAD83 / Alberta 10-TM (Resource)|+proj=tmerc +lon_0=-115 +k=0.9992 @14
3402|NAD83(CSRS) / Alberta 10-TM (Forest)|+proj=tmerc +lon_0=-115 +k=0.9992 +x_0=500000 @33
3403|NAD83(CSRS) / Alberta 10-TM (Resource)|+proj=tmerc +lon_0=-115 +k=0.9992 @33
3405x2|VN-2000 / UTM zone {48:1}N|+proj=utm +zone={48:1} @52
3416|ETRS89 / Austria Lambert|+proj=lcc +lat_0=47.5 +lon_0=13.3333333333333 +lat_1=49 +lat_2=46 +x_0=400000 +y_0=400000 @14
3440|PSD93 / UTM zone 40N|+proj=utm +zone=40 @53
3449x2|JAD2001 / UTM zone {17:1}N|+proj=utm +zone={17:1} @3
3460|Fiji 1986 / Fiji Map Grid|+proj=tmerc +lat_0=-17 +lon_0=178.75 +k=0.99985 +x_0=2000000 +y_0=4000000 @54
3461x2|Dabola 1981 / UTM zone {28:1}N|+proj=utm +zone={28:1} @55
3580|NAD83 / NWT Lambert|+proj=lcc +lat_0=0 +lon_0=-112 +lat_1=62 +lat_2=70 +x_0=0 +y_0=0 @14
3581|NAD83(CSRS) / NWT Lambert|+proj=lcc +lat_0=0 +lon_0=-112 +lat_1=62 +lat_2=70 +x_0=0 +y_0=0 @33
3761|NAD83(CSRS) / UTM zone 22N|+proj=utm +zone=22 @33
3763|ETRS89 / Portugal TM06|+proj=tmerc +lat_0=39.6682583333333 +lon_0=-8.13310833333333 +k=1 @14
3765|HTRS96 / Croatia TM|+proj=tmerc +lon_0=16.5 +k=0.9999 +x_0=500000 @14
3766|HTRS96 / Croatia LCC|+proj=lcc +lat_0=0 +lon_0=16.5 +lat_1=45.9166666666667 +lat_2=43.0833333333333 +x_0=0 +y_0=0 @14
3767|HTRS96 / UTM zone 33N|+proj=utm +zone=33 @14
3770|BDA2000 / Bermuda 2000 National Grid|+proj=tmerc +lat_0=32 +lon_0=-64.75 +k=1 +x_0=550000 +y_0=100000 @3
3775x3|NAD83 / Alberta 3TM ref merid {111:3} W|+proj=tmerc +lon_0=-{111:3} +k=0.9999 @14
3779x3|NAD83(CSRS) / Alberta 3TM ref merid {111:3} W|+proj=tmerc +lon_0=-{111:3} +k=0.9999 @33
3798|NAD83 / MTQ Lambert|+proj=lcc +lat_0=44 +lon_0=-70 +lat_1=50 +lat_2=46 +x_0=800000 +y_0=0 @14
3799|NAD83(CSRS) / MTQ Lambert|+proj=lcc +lat_0=44 +lon_0=-70 +lat_1=50 +lat_2=46 +x_0=800000 +y_0=0 @33
3801|NAD83 / Alberta 3TM ref merid 120 W|+proj=tmerc +lon_0=-120 +k=0.9999 @14
3802|NAD83(CSRS) / Alberta 3TM ref merid 120 W|+proj=tmerc +lon_0=-120 +k=0.9999 @33
3825x2|TWD97 / TM2 zone {119:2}|+proj=tmerc +lon_0={119:2} +k=0.9999 +x_0=250000 @14
3829|Hu Tzu Shan 1950 / UTM zone 51N|+proj=utm +zone=51 @56
3833|Pulkovo 1942(58) / Gauss-Kruger zone 2|+proj=tmerc +lon_0=9 +k=1 +x_0=2500000 @16
3834x3|Pulkovo 1942(83) / Gauss-Kruger zone {2:1}|+proj=tmerc +lon_0={9:6} +k=1 +x_0={2500000:1000000} @27
3838x2|Pulkovo 1942(58) / 3-degree Gauss-Kruger zone {4:5}|+proj=tmerc +lon_0={12:15} +k=1 +x_0={4500000:5000000} @16
3841|Pulkovo 1942(83) / 3-degree Gauss-Kruger zone 6|+proj=tmerc +lon_0=18 +k=1 +x_0=6500000 @27
3844|Pulkovo 1942(58) / Stereo70|+proj=sterea +lat_0=46 +lon_0=25 +k=0.99975 +x_0=500000 +y_0=500000 @16
3846x2|SWEREF99 / RT90 {5:-2.5} gon V emulation|+proj=tmerc +lon_0={13.5562666666667:2.2500178627776997} +k={1.0000058:-1.8976000015769046e-7} +x_0={1500044.695:19.578999999910593} +y_0=-{667.13:0.5810000000000173} @14
3848|SWEREF99 / RT90 0 gon emulation|+proj=tmerc +lon_0=18.0563 +k=1.0000054 +x_0=1500083.521 +y_0=-668.844 @14
3849x2|SWEREF99 / RT90 {2.5:2.5} gon O emulation|+proj=tmerc +lon_0={20.3063166666667:2.2500166666665997} +k={1.0000052:-2.9999999995311555e-7} +x_0={1500102.765:19.081000000005588} +y_0=-{670.706:1.850999999999999} @14
3852|RSRGD2000 / DGLC2000|+proj=lcc +lat_0=-90 +lon_0=157 +lat_1=-76.6666666666667 +lat_2=-79.3333333333333 +x_0=500000 +y_0=0 @14
3875x9|ETRS89 / GK{21:1}FIN|+proj=tmerc +lon_0={21:1} +k=1 +x_0={21500000:1000000} @14
3890x2|IGRS / UTM zone {37:1}N|+proj=utm +zone={37:1} @14
3893|ED50 / Iraq National Grid|+proj=tmerc +lat_0=29.0262683333333 +lon_0=46.5 +k=0.9994 +x_0=800000 @17
3942x9|RGF93 v1 / CC{42:1}|+proj=lcc +lat_0={42:1} +lon_0=3 +lat_1={41.25:1} +lat_2={42.75:1} +x_0=1700000 +y_0={1200000:1000000} @14
3978|NAD83 / Canada Atlas Lambert|+proj=lcc +lat_0=49 +lon_0=-95 +lat_1=49 +lat_2=77 +x_0=0 +y_0=0 @14
3979|NAD83(CSRS) / Canada Atlas Lambert|+proj=lcc +lat_0=49 +lon_0=-95 +lat_1=49 +lat_2=77 +x_0=0 +y_0=0 @33
3986|Katanga 1955 / Katanga Gauss zone A|+proj=tmerc +lat_0=-9 +lon_0=30 +k=1 +x_0=200000 +y_0=500000 @57
3987|Katanga 1955 / Katanga Gauss zone B|+proj=tmerc +lat_0=-9 +lon_0=28 +k=1 +x_0=200000 +y_0=500000 @57
3988|Katanga 1955 / Katanga Gauss zone C|+proj=tmerc +lat_0=-9 +lon_0=26 +k=1 +x_0=200000 +y_0=500000 @57
3989|Katanga 1955 / Katanga Gauss zone D|+proj=tmerc +lat_0=-9 +lon_0=24 +k=1 +x_0=200000 +y_0=500000 @57
4026|MOLDREF99 / Moldova TM|+proj=tmerc +lon_0=28.4 +k=0.99994 +x_0=200000 +y_0=-5000000 @14
4037|WGS 84 / TMzn35N|+proj=utm +zone=35 @20
4051|RGRDC 2005 / Congo TM zone 18|+proj=tmerc +lon_0=18 +k=0.9999 +x_0=500000 +y_0=10000000 @14
4056x5|RGRDC 2005 / Congo TM zone {20:2}|+proj=tmerc +lon_0={20:2} +k=0.9999 +x_0=500000 +y_0=10000000 @14
4061x3|RGRDC 2005 / UTM zone {33:1}S|+proj=utm +zone={33:1} +south @14
4082x2|REGCAN95 / UTM zone {27:1}N|+proj=utm +zone={27:1} @14
4415|Katanga 1955 / Katanga Lambert|+proj=lcc +lat_0=-9 +lon_0=26 +lat_1=-6.5 +lat_2=-11.5 +x_0=500000 +y_0=500000 @57
4417|Pulkovo 1942(83) / 3-degree Gauss-Kruger zone 7|+proj=tmerc +lon_0=21 +k=1 +x_0=7500000 @27
4462|WGS 84 / Australian Centre for Remote Sensing Lambert|+proj=lcc +lat_0=-27 +lon_0=132 +lat_1=-18 +lat_2=-36 +x_0=0 +y_0=0 @20
4471|RGM04 / UTM zone 38S|+proj=utm +zone=38 +south @14
4484x6|Mexico ITRF92 / UTM zone {11:1}N|+proj=utm +zone={11:1} @14
4559|RRAF 1991 / UTM zone 20N|+proj=utm +zone=20 @14
4568x11|New Beijing / Gauss-Kruger zone {13:1}|+proj=tmerc +lon_0={75:6} +k=1 +x_0={13500000:1000000} @58
4652x5|New Beijing / 3-degree Gauss-Kruger zone {25:1}|+proj=tmerc +lon_0={75:3} +k=1 +x_0={25500000:1000000} @58
4766x15|New Beijing / 3-degree Gauss-Kruger zone {30:1}|+proj=tmerc +lon_0={90:3} +k=1 +x_0={30500000:1000000} @58
4826|WGS 84 / Cape Verde National|+proj=lcc +lat_0=15.8333333333333 +lon_0=-24 +lat_1=15 +lat_2=16.6666666666667 +x_0=161587.83 +y_0=128511.202 @20
5014x2|PTRA08 / UTM zone {25:1}N|+proj=utm +zone={25:1} @14
5016|PTRA08 / UTM zone 28N|+proj=utm +zone=28 @14
5018|Lisbon / Portuguese Grid New|+proj=tmerc +lat_0=39.6666666666667 +lon_0=-8.13190611111111 +k=1 @59
5048|ETRS89 / TM35FIN(N,E)|+proj=utm +zone=35 @14
5112|ETRS89 / NTM zone 12|+proj=tmerc +lat_0=58 +lon_0=12.5 +k=1 +x_0=100000 +y_0=1000000 @14
5169|Tokyo 1892 / Korea West Belt|+proj=tmerc +lat_0=38 +lon_0=125 +k=1 +x_0=200000 +y_0=500000 @36
5170|Tokyo 1892 / Korea Central Belt|+proj=tmerc +lat_0=38 +lon_0=127 +k=1 +x_0=200000 +y_0=500000 @36
5171|Tokyo 1892 / Korea East Belt|+proj=tmerc +lat_0=38 +lon_0=129 +k=1 +x_0=200000 +y_0=500000 @36
5174|Korean 1985 / Modified Central Belt|+proj=tmerc +lat_0=38 +lon_0=127.002890277778 +k=1 +x_0=200000 +y_0=500000 @12
5178|Korean 1985 / Unified CS|+proj=tmerc +lat_0=38 +lon_0=127.5 +k=0.9996 +x_0=1000000 +y_0=2000000 @12
5179|Korea 2000 / Unified CS|+proj=tmerc +lat_0=38 +lon_0=127.5 +k=0.9996 +x_0=1000000 +y_0=2000000 @14
5181|Korea 2000 / Central Belt|+proj=tmerc +lat_0=38 +lon_0=127 +k=1 +x_0=200000 +y_0=500000 @14
5186|Korea 2000 / Central Belt 2010|+proj=tmerc +lat_0=38 +lon_0=127 +k=1 +x_0=200000 +y_0=600000 @14
5221|S-JTSK (Ferro) / Krovak East North|+proj=krovak +lat_0=49.5 +lon_0=42.5 +alpha=30.2881397527778 +k=0.9999 +x_0=0 +y_0=0 @7
5223|WGS 84 / Gabon TM|+proj=tmerc +lon_0=12 +k=0.9996 +x_0=500000 +y_0=500000 @20
5234|Kandawala / Sri Lanka Grid|+proj=tmerc +lat_0=7.00048027777778 +lon_0=80.7717111111111 +k=0.9999238418 +x_0=200000 +y_0=200000 @60
5235|SLD99 / Sri Lanka Grid 1999|+proj=tmerc +lat_0=7.00047152777778 +lon_0=80.7717130833333 +k=0.9999238418 +x_0=500000 +y_0=500000 @61
5253x6|TUREF / TM{27:3}|+proj=tmerc +lon_0={27:3} +k=1 +x_0=500000 @14
5269x6|TUREF / 3-degree Gauss-Kruger zone {9:1}|+proj=tmerc +lon_0={27:3} +k=1 +x_0={9500000:1000000} @14
5316|ETRS89 / Faroe TM|+proj=tmerc +lon_0=-7 +k=0.999997 +x_0=200000 +y_0=-6000000 @14
5320|NAD83 / Teranet Ontario Lambert|+proj=lcc +lat_0=0 +lon_0=-84 +lat_1=44.5 +lat_2=54.5 +x_0=1000000 +y_0=0 @14
5321|NAD83(CSRS) / Teranet Ontario Lambert|+proj=lcc +lat_0=0 +lon_0=-84 +lat_1=44.5 +lat_2=54.5 +x_0=1000000 +y_0=0 @33
5325|ISN2004 / Lambert 2004|+proj=lcc +lat_0=65 +lon_0=-19 +lat_1=64.25 +lat_2=65.75 +x_0=1700000 +y_0=300000 @14
5337|Aratu / UTM zone 25S|+proj=utm +zone=25 +south @62
5343x6|POSGAR 2007 / Argentina {1:1}|+proj=tmerc +lat_0=-90 +lon_0=-{72:-3} +k=1 +x_0={1500000:1000000} @63
5355x2|MARGEN / UTM zone {20:-1}S|+proj=utm +zone={20:-1} +south @14
5357|MARGEN / UTM zone 21S|+proj=utm +zone=21 +south @14
5361x2|SIRGAS-Chile 2002 / UTM zone {19:-1}S|+proj=utm +zone={19:-1} +south @14
5367|CR05 / CRTM05|+proj=tmerc +lon_0=-84 +k=0.9999 +x_0=500000 @64
5382x2|SIRGAS-ROU98 / UTM zone {21:1}S|+proj=utm +zone={21:1} +south @3
5387|Peru96 / UTM zone 18S|+proj=utm +zone=18 +south @14
5389|Peru96 / UTM zone 19S|+proj=utm +zone=19 +south @14
5396|SIRGAS 2000 / UTM zone 26S|+proj=utm +zone=26 +south @14
5459|Ocotepeque 1935 / Guatemala Sur|+proj=lcc +lat_1=14.9 +lat_0=14.9 +lon_0=-90.3333333333333 +k_0=0.99989906 +x_0=500000 +y_0=325992.681 @65
5461|Ocotepeque 1935 / Nicaragua Norte|+proj=lcc +lat_1=13.8666666666667 +lat_0=13.8666666666667 +lon_0=-85.5 +k_0=0.99990314 +x_0=500000 +y_0=359891.816 @65
5462|Ocotepeque 1935 / Nicaragua Sur|+proj=lcc +lat_1=11.7333333333333 +lat_0=11.7333333333333 +lon_0=-85.5 +k_0=0.99992228 +x_0=500000 +y_0=288876.327 @65
5469|Panama-Colon 1911 / Panama Lambert|+proj=lcc +lat_1=8.41666666666667 +lat_0=8.41666666666667 +lon_0=-80 +k_0=0.99989909 +x_0=500000 +y_0=294865.303 @66
5479|RSRGD2000 / MSLC2000|+proj=lcc +lat_0=-78 +lon_0=163 +lat_1=-76.6666666666667 +lat_2=-79.3333333333333 +x_0=7000000 +y_0=5000000 @14
5480|RSRGD2000 / BCLC2000|+proj=lcc +lat_0=-74.5 +lon_0=165 +lat_1=-73.6666666666667 +lat_2=-75.3333333333333 +x_0=5000000 +y_0=3000000 @14
5481|RSRGD2000 / PCLC2000|+proj=lcc +lat_0=-71.5 +lon_0=166 +lat_1=-70.6666666666667 +lat_2=-72.3333333333333 +x_0=3000000 +y_0=1000000 @14
5490|RGAF09 / UTM zone 20N|+proj=utm +zone=20 @14
5513|S-JTSK / Krovak|+proj=krovak +axis=swu +lat_0=49.5 +lon_0=24.8333333333333 +alpha=30.2881397527778 +k=0.9999 +x_0=0 +y_0=0 @67
5514|S-JTSK / Krovak East North|+proj=krovak +lat_0=49.5 +lon_0=24.8333333333333 +alpha=30.2881397527778 +k=0.9999 +x_0=0 +y_0=0 @67
5523|WGS 84 / Gabon TM 2011|+proj=tmerc +lon_0=11.5 +k=0.9996 +x_0=1500000 +y_0=5500000 @20
5530|SAD69(96) / Brazil Polyconic|+proj=poly +lat_0=0 +lon_0=-54 +x_0=5000000 +y_0=10000000 @68
5531|SAD69(96) / UTM zone 21S|+proj=utm +zone=21 +south @68
5533x3|SAD69(96) / UTM zone {23:1}S|+proj=utm +zone={23:1} +south @68
5550x3|PNG94 / PNGMG94 zone {54:1}|+proj=utm +zone={54:1} +south @14
5563x3|UCS-2000 / Gauss-Kruger zone {5:1}|+proj=tmerc +lon_0={27:6} +k=1 +x_0={5500000:1000000} @69
5627|ED50 / TM 6 NE|+proj=tmerc +lon_0=6 +k=0.9996 +x_0=500000 @17
5629|Moznet / UTM zone 38S|+proj=utm +zone=38 +south @3
5643|ED50 / SPBA LCC|+proj=lcc +lat_0=48 +lon_0=10 +lat_1=52.6666666666667 +lat_2=54.3333333333333 +x_0=815000 +y_0=0 @17
5644|RGR92 / UTM zone 39S|+proj=utm +zone=39 +south @14
5651x3|ETRS89 / UTM zone {31:1}N (N-zE)|+proj=tmerc +lon_0={3:6} +k=0.9996 +x_0={31500000:1000000} @14
5700|NZGD2000 / UTM zone 1S|+proj=utm +zone=1 +south @14
5837|Yemen NGN96 / UTM zone 40N|+proj=utm +zone=40 @3
5839|Peru96 / UTM zone 17S|+proj=utm +zone=17 +south @14
5858|SAD69(96) / UTM zone 22S|+proj=utm +zone=22 +south @68
5875x3|SAD69(96) / UTM zone {18:1}S|+proj=utm +zone={18:1} +south @68
5880|SIRGAS 2000 / Brazil Polyconic|+proj=poly +lat_0=0 +lon_0=-54 +x_0=5000000 +y_0=10000000 @14
5887|TGD2005 / Tonga Map Grid|+proj=tmerc +lon_0=-177 +k=0.9996 +x_0=1500000 +y_0=5000000 @14
5896x2|VN-2000 / TM-3 zone {481:1}|+proj=tmerc +lon_0={102:3} +k=0.9999 +x_0=500000 @52
5898|VN-2000 / TM-3 zone 491|+proj=tmerc +lon_0=108 +k=0.9999 +x_0=500000 @52
5899|VN-2000 / TM-3 107-45|+proj=tmerc +lon_0=107.75 +k=0.9999 +x_0=500000 @52
6210|SIRGAS 2000 / UTM zone 23N|+proj=utm +zone=23 @14
6316|MGI 1901 / Balkans zone 7|+proj=tmerc +lon_0=21 +k=0.9999 +x_0=7500000 @70
6362|Mexico ITRF92 / LCC|+proj=lcc +lat_0=12 +lon_0=-102 +lat_1=17.5 +lat_2=29.5 +x_0=2500000 +y_0=0 @14
6366x6|Mexico ITRF2008 / UTM zone {11:1}N|+proj=utm +zone={11:1} @14
6372|Mexico ITRF2008 / LCC|+proj=lcc +lat_0=12 +lon_0=-102 +lat_1=17.5 +lat_2=29.5 +x_0=2500000 +y_0=0 @14
6382x6|UCS-2000 / Ukraine TM zone {8:1}|+proj=tmerc +lon_0={24:3} +k=1 +x_0=300000 @69
6622|NAD83(CSRS) / Quebec Lambert|+proj=lcc +lat_0=44 +lon_0=-68.5 +lat_1=60 +lat_2=46 +x_0=0 +y_0=0 @33
6646|Karbala 1979 / Iraq National Grid|+proj=tmerc +lat_0=29.0262683333333 +lon_0=46.5 +k=0.9994 +x_0=800000 @50
6669|JGD2011 / Japan Plane Rectangular CS I|+proj=tmerc +lat_0=33 +lon_0=129.5 +k=0.9999 @14
6670|JGD2011 / Japan Plane Rectangular CS II|+proj=tmerc +lat_0=33 +lon_0=131 +k=0.9999 @14
6676|JGD2011 / Japan Plane Rectangular CS VIII|+proj=tmerc +lat_0=36 +lon_0=138.5 +k=0.9999 @14
6677|JGD2011 / Japan Plane Rectangular CS IX|+proj=tmerc +lat_0=36 +lon_0=139.833333333333 +k=0.9999 @14
6678|JGD2011 / Japan Plane Rectangular CS X|+proj=tmerc +lat_0=40 +lon_0=140.833333333333 +k=0.9999 @14
6680|JGD2011 / Japan Plane Rectangular CS XII|+proj=tmerc +lat_0=44 +lon_0=142.25 +k=0.9999 @14
6681|JGD2011 / Japan Plane Rectangular CS XIII|+proj=tmerc +lat_0=44 +lon_0=144.25 +k=0.9999 @14
6688x5|JGD2011 / UTM zone {51:1}N|+proj=utm +zone={51:1} @14
6703|WGS 84 / TM 60 SW|+proj=tmerc +lon_0=-60 +k=0.9996 +x_0=500000 +y_0=10000000 @20
6736x2|GDA94 / MGA zone {46:1}|+proj=utm +zone={46:1} +south @14
6738|GDA94 / MGA zone 59|+proj=utm +zone=59 +south @14
7005x2|Nahrwan 1934 / UTM zone {37:1}N|+proj=utm +zone={37:1} @51
7074x8|RGTAAF07 / UTM zone {37:1}S|+proj=utm +zone={37:1} +south @14
7142|Palestine 1923 / Palestine Grid modified|+proj=tmerc +lat_0=31.7340969444444 +lon_0=35.2120805555556 +k=1 +x_0=170251.555 +y_0=126867.909 @71
7374x3|ONGD14 / UTM zone {39:1}N|+proj=utm +zone={39:1} @14
7693x2|Kyrg-06 / zone {2:1}|+proj=tmerc +lon_0={71.5166666666667:3} +k=1 +x_0={2300000:1000000} +y_0=14743.5 @14
7755|WGS 84 / India NSF LCC|+proj=lcc +lat_0=24 +lon_0=80 +lat_1=12.472955 +lat_2=35.1728044444444 +x_0=4000000 +y_0=4000000 @20
7756|WGS 84 / Andhra Pradesh|+proj=lcc +lat_0=16.25543298 +lon_0=80.875 +lat_1=13.75 +lat_2=18.75 +x_0=1000000 +y_0=1000000 @20
7757|WGS 84 / Arunachal Pradesh|+proj=lcc +lat_0=28.00157897 +lon_0=94.5 +lat_1=27 +lat_2=29 +x_0=1000000 +y_0=1000000 @20
7758|WGS 84 / Assam|+proj=lcc +lat_0=26.00257703 +lon_0=92.75 +lat_1=24.6666666666667 +lat_2=27.3333333333333 +x_0=1000000 +y_0=1000000 @20
7759|WGS 84 / Bihar|+proj=lcc +lat_0=25.87725247 +lon_0=85.875 +lat_1=24.625 +lat_2=27.125 +x_0=1000000 +y_0=1000000 @20
7761|WGS 84 / Gujarat|+proj=lcc +lat_0=22.37807121 +lon_0=71.375 +lat_1=20.7916666666667 +lat_2=23.9583333333333 +x_0=1000000 +y_0=1000000 @20
7762|WGS 84 / Haryana|+proj=lcc +lat_0=29.25226266 +lon_0=76 +lat_1=28.0833333333333 +lat_2=30.4166666666667 +x_0=1000000 +y_0=1000000 @20
7763|WGS 84 / Himachal Pradesh|+proj=lcc +lat_0=31.75183497 +lon_0=77.375 +lat_1=30.75 +lat_2=32.75 +x_0=1000000 +y_0=1000000 @20
7764|WGS 84 / Jammu and Kashmir|+proj=lcc +lat_0=34.75570874 +lon_0=76.5 +lat_1=33.0833333333333 +lat_2=36.4166666666667 +x_0=1000000 +y_0=1000000 @20
7765|WGS 84 / Jharkhand|+proj=lcc +lat_0=23.62652682 +lon_0=85.625 +lat_1=22.5416666666667 +lat_2=24.7083333333333 +x_0=1000000 +y_0=1000000 @20
7766|WGS 84 / Madhya Pradesh|+proj=lcc +lat_0=24.00529821 +lon_0=78.375 +lat_1=22 +lat_2=26 +x_0=1000000 +y_0=1000000 @20
7767|WGS 84 / Maharashtra|+proj=lcc +lat_0=18.88015774 +lon_0=76.75 +lat_1=16.625 +lat_2=21.125 +x_0=1000000 +y_0=1000000 @20
7771|WGS 84 / India Northeast|+proj=lcc +lat_0=25.63452135 +lon_0=93.5 +lat_1=23.0416666666667 +lat_2=28.2083333333333 +x_0=1000000 +y_0=1000000 @20
7772|WGS 84 / Orissa|+proj=lcc +lat_0=20.25305174 +lon_0=84.375 +lat_1=18.5833333333333 +lat_2=21.9166666666667 +x_0=1000000 +y_0=1000000 @20
7773|WGS 84 / Punjab|+proj=lcc +lat_0=31.00178226 +lon_0=75.375 +lat_1=30 +lat_2=32 +x_0=1000000 +y_0=1000000 @20
7774|WGS 84 / Rajasthan|+proj=lcc +lat_0=26.88505546 +lon_0=73.875 +lat_1=24.2916666666667 +lat_2=29.4583333333333 +x_0=1000000 +y_0=1000000 @20
7775|WGS 84 / Uttar Pradesh|+proj=lcc +lat_0=27.13270823 +lon_0=80.875 +lat_1=24.875 +lat_2=29.375 +x_0=1000000 +y_0=1000000 @20
7776|WGS 84 / Uttaranchal|+proj=lcc +lat_0=30.0017132 +lon_0=79.375 +lat_1=29 +lat_2=31 +x_0=1000000 +y_0=1000000 @20
7777|WGS 84 / Andaman and Nicobar|+proj=tmerc +lat_0=10.25 +lon_0=93.25 +k=0.9999428 +x_0=1000000 +y_0=1000000 @20
7778|WGS 84 / Chhattisgarh|+proj=tmerc +lat_0=21 +lon_0=82.25 +k=0.9998332 +x_0=1000000 +y_0=1000000 @20
7780|WGS 84 / Karnataka|+proj=tmerc +lat_0=15.125 +lon_0=76.375 +k=0.9998012 +x_0=1000000 +y_0=1000000 @20
7781|WGS 84 / Kerala|+proj=tmerc +lat_0=10.5 +lon_0=76 +k=0.9999177 +x_0=1000000 +y_0=1000000 @20
7785|WGS 84 / Tamil Nadu|+proj=tmerc +lat_0=10.875 +lon_0=78.375 +k=0.9997942 +x_0=1000000 +y_0=1000000 @20
7787|WGS 84 / West Bengal|+proj=tmerc +lat_0=24.375 +lon_0=87.875 +k=0.9998584 +x_0=1000000 +y_0=1000000 @20
7791x2|RDN2008 / UTM zone {32:1}N|+proj=utm +zone={32:1} @14
7845|GDA2020 / GA LCC|+proj=lcc +lat_0=0 +lon_0=134 +lat_1=-18 +lat_2=-36 +x_0=0 +y_0=0 @14
7846x14|GDA2020 / MGA zone {46:1}|+proj=utm +zone={46:1} +south @14
7899|GDA2020 / Vicgrid|+proj=lcc +lat_0=-37 +lon_0=145 +lat_1=-36 +lat_2=-38 +x_0=2500000 +y_0=2500000 @14
8044|Gusterberg Grid (Ferro)|+proj=cass +lat_0=48.0384638888889 +lon_0=31.8041805555556 +x_0=0 +y_0=0 @72
8045|St. Stephen Grid (Ferro)|+proj=cass +lat_0=48.2087611111111 +lon_0=34.0409222222222 +x_0=0 +y_0=0 @72
8058|GDA2020 / NSW Lambert|+proj=lcc +lat_0=-33.25 +lon_0=147 +lat_1=-30.75 +lat_2=-35.75 +x_0=9300000 +y_0=4500000 @14
8059|GDA2020 / SA Lambert|+proj=lcc +lat_0=-32 +lon_0=135 +lat_1=-28 +lat_2=-36 +x_0=1000000 +y_0=2000000 @14
8088|ISN2016 / Lambert 2016|+proj=lcc +lat_0=65 +lon_0=-19 +lat_1=64.25 +lat_2=65.75 +x_0=2700000 +y_0=300000 @14
8352|S-JTSK [JTSK03] / Krovak|+proj=krovak +axis=swu +lat_0=49.5 +lon_0=24.8333333333333 +alpha=30.2881397527778 +k=0.9999 +x_0=0 +y_0=0 @73
8353|S-JTSK [JTSK03] / Krovak East North|+proj=krovak +lat_0=49.5 +lon_0=24.8333333333333 +alpha=30.2881397527778 +k=0.9999 +x_0=0 +y_0=0 @73
8677x2|MGI 1901 / Balkans zone {5:1}|+proj=tmerc +lon_0={15:3} +k=0.9999 +x_0={5500000:1000000} @70
8682|SRB_ETRS89 / UTM zone 34N|+proj=utm +zone=34 @14
8837x3|MTRF-2000 / UTM zone {37:1}N|+proj=utm +zone={37:1} @14
8903|RGWF96 / UTM zone 1S|+proj=utm +zone=1 +south @14
8908|CR-SIRGAS / CRTM05|+proj=tmerc +lon_0=-84 +k=0.9999 +x_0=500000 @14
8909|CR-SIRGAS / UTM zone 16N|+proj=utm +zone=16 @14
8950x2|SIRGAS-Chile 2010 / UTM zone {18:1}S|+proj=utm +zone={18:1} +south @14
9149x2|SIRGAS-Chile 2013 / UTM zone {18:1}S|+proj=utm +zone={18:1} +south @14
9154x2|SIRGAS-Chile 2016 / UTM zone {18:1}S|+proj=utm +zone={18:1} +south @14
9156x3|RSAO13 / UTM zone {32:1}S|+proj=utm +zone={32:1} +south @14
9159|RSAO13 / TM 12 SE|+proj=tmerc +lon_0=12 +k=0.9996 +x_0=500000 +y_0=10000000 @14
9208x2|VN-2000 / TM-3 {104:1}-{45:-15}|+proj=tmerc +lon_0={104.75:0.75} +k=0.9999 +x_0=500000 @52
9210|VN-2000 / TM-3 105-45|+proj=tmerc +lon_0=105.75 +k=0.9999 +x_0=500000 @52
9211|VN-2000 / TM-3 106-00|+proj=tmerc +lon_0=106 +k=0.9999 +x_0=500000 @52
9214|VN-2000 / TM-3 107-00|+proj=tmerc +lon_0=107 +k=0.9999 +x_0=500000 @52
9218|VN-2000 / TM-3 108-30|+proj=tmerc +lon_0=108.5 +k=0.9999 +x_0=500000 @52
9252|MMN / Argentina 2|+proj=tmerc +lat_0=-90 +lon_0=-69 +k=1 +x_0=2500000 @74
9254|MMS / Argentina 2|+proj=tmerc +lat_0=-90 +lon_0=-69 +k=1 +x_0=2500000 @75
9284x2|Pampa del Castillo / Argentina {1:2}|+proj=tmerc +lat_0=-90 +lon_0=-{72:-6} +k=1 +x_0={1500000:2000000} @10
9295x3|ONGD17 / UTM zone {39:1}N|+proj=utm +zone={39:1} @14
9357x3|KSA-GRF17 / UTM zone {37:1}N|+proj=utm +zone={37:1} @76
9377|MAGNA-SIRGAS / Origen-Nacional|+proj=tmerc +lat_0=4 +lon_0=-73 +k=0.9992 +x_0=5000000 +y_0=2000000 @14
9391|BGS2005 / UTM zone 35N|+proj=utm +zone=35 @14
9405|PN68 / UTM zone 28N|+proj=utm +zone=28 @77
9476x7|SRGI2013 / UTM zone {46:1}N|+proj=utm +zone={46:1} @3
9487x8|SRGI2013 / UTM zone {47:1}S|+proj=utm +zone={47:1} +south @3
9678|Gulshan 303 / Bangladesh Transverse Mercator|+proj=tmerc +lon_0=90 +k=0.9996 +x_0=500000 +y_0=-2000000 @39
9680|WGS 84 / TM 90 NE|+proj=tmerc +lon_0=90 +k=0.9996 +x_0=500000 @20
9698x2|REDGEOMIN / UTM zone {18:1}S|+proj=utm +zone={18:1} +south @14
9709|NAD83(CSRS) / UTM zone 23N|+proj=utm +zone=23 @33
9793|RGF93 v2 / Lambert-93|+proj=lcc +lat_0=46.5 +lon_0=3 +lat_1=49 +lat_2=44 +x_0=700000 +y_0=6600000 @14
9794|RGF93 v2b / Lambert-93|+proj=lcc +lat_0=46.5 +lon_0=3 +lat_1=49 +lat_2=44 +x_0=700000 +y_0=6600000 @14
9822x9|RGF93 v2 / CC{42:1}|+proj=lcc +lat_0={42:1} +lon_0=3 +lat_1={41.25:1} +lat_2={42.75:1} +x_0=1700000 +y_0={1200000:1000000} @14
9842x9|RGF93 v2b / CC{42:1}|+proj=lcc +lat_0={42:1} +lon_0=3 +lat_1={41.25:1} +lat_2={42.75:1} +x_0=1700000 +y_0={1200000:1000000} @14
9853|UCS-2000 / LCS-51 Odessa|+proj=tmerc +lon_0=30 +k=1 +x_0=300000 @69
9874|PNG94 / PNGMG94 zone 57|+proj=utm +zone=57 +south @14
20005x26|Pulkovo 1995 / Gauss-Kruger zone {5:1}|+proj=tmerc +lon_0={27:6} +k=1 +x_0={5500000:1000000} @30
20031x2|Pulkovo 1995 / Gauss-Kruger zone {31:1}|+proj=tmerc +lon_0=-{177:-6} +k=1 +x_0={31500000:1000000} @30
20042|SIRGAS-Chile 2021 / UTM zone 12S|+proj=utm +zone=12 +south @14
20048x2|SIRGAS-Chile 2021 / UTM zone {18:1}S|+proj=utm +zone={18:1} +south @14
20135x4|Adindan / UTM zone {35:1}N|+proj=utm +zone={35:1} @78
20249x10|AGD66 / AMG zone {49:1}|+proj=utm +zone={49:1} +south @40
20437x3|Ain el Abd / UTM zone {37:1}N|+proj=utm +zone={37:1} @23
20538x2|Afgooye / UTM zone {38:1}N|+proj=utm +zone={38:1} @79
20790|Lisbon (Lisbon) / Portuguese National Grid|+proj=tmerc +lat_0=39.6666666666667 +lon_0=1 +k=1 +x_0=200000 +y_0=300000 @80
20791|Lisbon (Lisbon) / Portuguese Grid|+proj=tmerc +lat_0=39.6666666666667 +lon_0=1 +k=1 @80
20822x3|Aratu / UTM zone {22:1}S|+proj=utm +zone={22:1} +south @62
20934x3|Arc 1950 / UTM zone {34:1}S|+proj=utm +zone={34:1} +south @81
21036x2|Arc 1960 / UTM zone {36:1}S|+proj=utm +zone={36:1} +south @82
21096x2|Arc 1960 / UTM zone {36:1}N|+proj=utm +zone={36:1} @82
21148x3|Batavia / UTM zone {48:1}S|+proj=utm +zone={48:1} +south @19
21413x11|Beijing 1954 / Gauss-Kruger zone {13:1}|+proj=tmerc +lon_0={75:6} +k=1 +x_0={13500000:1000000} @28
21780|Bern 1898 (Bern) / LV03C|+proj=somerc +lat_0=46.9524055555556 +lon_0=0 +k_0=1 +x_0=0 +y_0=0 @83
21781|CH1903 / LV03|+proj=somerc +lat_0=46.9524055555556 +lon_0=7.43958333333333 +k_0=1 +x_0=600000 +y_0=200000 @4
21818|Bogota 1975 / UTM zone 18N|+proj=utm +zone=18 @84
21896|Bogota 1975 / Colombia West zone|+proj=tmerc +lat_0=4.59904722222222 +lon_0=-77.0809166666667 +k=1 +x_0=1000000 +y_0=1000000 @84
21897|Bogota 1975 / Colombia Bogota zone|+proj=tmerc +lat_0=4.59904722222222 +lon_0=-74.0809166666667 +k=1 +x_0=1000000 +y_0=1000000 @84
21898|Bogota 1975 / Colombia East Central zone|+proj=tmerc +lat_0=4.59904722222222 +lon_0=-71.0809166666667 +k=1 +x_0=1000000 +y_0=1000000 @84
21899|Bogota 1975 / Colombia East zone|+proj=tmerc +lat_0=4.59904722222222 +lon_0=-68.0809166666667 +k=1 +x_0=1000000 +y_0=1000000 @84
22032x2|Camacupa 1948 / UTM zone {32:1}S|+proj=utm +zone={32:1} +south @85
22092|Camacupa 1948 / TM 12 SE|+proj=tmerc +lon_0=12 +k=0.9996 +x_0=500000 +y_0=10000000 @85
22171x6|POSGAR 98 / Argentina {1:1}|+proj=tmerc +lat_0=-90 +lon_0=-{72:-3} +k=1 +x_0={1500000:1000000} @14
22181x6|POSGAR 94 / Argentina {1:1}|+proj=tmerc +lat_0=-90 +lon_0=-{72:-3} +k=1 +x_0={1500000:1000000} @3
22191x6|Campo Inchauspe / Argentina {1:1}|+proj=tmerc +lat_0=-90 +lon_0=-{72:-3} +k=1 +x_0={1500000:1000000} @21
22234x2|Cape / UTM zone {34:1}S|+proj=utm +zone={34:1} +south @86
22279|Cape / Lo19|+proj=tmerc +axis=wsu +lon_0=19 +k=1 @86
22281|Cape / Lo21|+proj=tmerc +axis=wsu +lon_0=21 +k=1 @86
22283|Cape / Lo23|+proj=tmerc +axis=wsu +lon_0=23 +k=1 @86
22285|Cape / Lo25|+proj=tmerc +axis=wsu +lon_0=25 +k=1 @86
22287|Cape / Lo27|+proj=tmerc +axis=wsu +lon_0=27 +k=1 @86
22289|Cape / Lo29|+proj=tmerc +axis=wsu +lon_0=29 +k=1 @86
22291|Cape / Lo31|+proj=tmerc +axis=wsu +lon_0=31 +k=1 @86
22332|Carthage / UTM zone 32N|+proj=utm +zone=32 @11
22391|Carthage / Nord Tunisie|+proj=lcc +lat_1=36 +lat_0=36 +lon_0=9.9 +k_0=0.999625544 +x_0=500000 +y_0=300000 @11
22392|Carthage / Sud Tunisie|+proj=lcc +lat_1=33.3 +lat_0=33.3 +lon_0=9.9 +k_0=0.999625769 +x_0=500000 +y_0=300000 @11
22770|Deir ez Zor / Syria Lambert|+proj=lcc +lat_1=34.65 +lat_0=34.65 +lon_0=37.35 +k_0=0.9996256 +x_0=300000 +y_0=300000 @87
22780|Deir ez Zor / Levant Stereographic|+proj=sterea +lat_0=34.2 +lon_0=39.15 +k=0.9995341 +x_0=0 +y_0=0 @87
22991|Egypt 1907 / Blue Belt|+proj=tmerc +lat_0=30 +lon_0=35 +k=1 +x_0=300000 +y_0=1100000 @88
22992|Egypt 1907 / Red Belt|+proj=tmerc +lat_0=30 +lon_0=31 +k=1 +x_0=615000 +y_0=810000 @88
22993|Egypt 1907 / Purple Belt|+proj=tmerc +lat_0=30 +lon_0=27 +k=1 +x_0=700000 +y_0=200000 @88
22994|Egypt 1907 / Extended Purple Belt|+proj=tmerc +lat_0=30 +lon_0=27 +k=1 +x_0=700000 +y_0=1200000 @88
23028x11|ED50 / UTM zone {28:1}N|+proj=utm +zone={28:1} @17
23090|ED50 / TM 0 N|+proj=tmerc +lon_0=0 +k=0.9996 +x_0=500000 @17
23095|ED50 / TM 5 NE|+proj=tmerc +lon_0=5 +k=0.9996 +x_0=500000 @17
23240|Fahud / UTM zone 40N|+proj=utm +zone=40 @89
23700|HD72 / EOV|+proj=somerc +lat_0=47.1443937222222 +lon_0=19.0485717777778 +k_0=0.99993 +x_0=650000 +y_0=200000 @90
23831x2|DGN95 / Indonesia TM-3 zone {47.1:0.10000000000000142}|+proj=tmerc +lon_0={97.5:3} +k=0.9999 +x_0=200000 +y_0=1500000 @3
23833x2|DGN95 / Indonesia TM-3 zone {48.1:0.10000000000000142}|+proj=tmerc +lon_0={103.5:3} +k=0.9999 +x_0=200000 +y_0=1500000 @3
23835x2|DGN95 / Indonesia TM-3 zone {49.1:0.10000000000000142}|+proj=tmerc +lon_0={109.5:3} +k=0.9999 +x_0=200000 +y_0=1500000 @3
23837x2|DGN95 / Indonesia TM-3 zone {50.1:0.10000000000000142}|+proj=tmerc +lon_0={115.5:3} +k=0.9999 +x_0=200000 +y_0=1500000 @3
23839x2|DGN95 / Indonesia TM-3 zone {51.1:0.10000000000000142}|+proj=tmerc +lon_0={121.5:3} +k=0.9999 +x_0=200000 +y_0=1500000 @3
23841x2|DGN95 / Indonesia TM-3 zone {52.1:0.10000000000000142}|+proj=tmerc +lon_0={127.5:3} +k=0.9999 +x_0=200000 +y_0=1500000 @3
23843x2|DGN95 / Indonesia TM-3 zone {53.1:0.10000000000000142}|+proj=tmerc +lon_0={133.5:3} +k=0.9999 +x_0=200000 +y_0=1500000 @3
23845|DGN95 / Indonesia TM-3 zone 54.1|+proj=tmerc +lon_0=139.5 +k=0.9999 +x_0=200000 +y_0=1500000 @3
23847x6|ID74 / UTM zone {47:1}N|+proj=utm +zone={47:1} @91
23866x7|DGN95 / UTM zone {46:1}N|+proj=utm +zone={46:1} @3
23877x8|DGN95 / UTM zone {47:1}S|+proj=utm +zone={47:1} +south @3
23887x8|ID74 / UTM zone {47:1}S|+proj=utm +zone={47:1} +south @91
23946x3|Indian 1954 / UTM zone {46:1}N|+proj=utm +zone={46:1} @92
24047x2|Indian 1975 / UTM zone {47:1}N|+proj=utm +zone={47:1} @93
24305x2|Kalianpur 1937 / UTM zone {45:1}N|+proj=utm +zone={45:1} @94
24311x3|Kalianpur 1962 / UTM zone {41:1}N|+proj=utm +zone={41:1} @95
24342x5|Kalianpur 1975 / UTM zone {42:1}N|+proj=utm +zone={42:1} @96
24375|Kalianpur 1937 / India zone IIb|+proj=lcc +lat_1=26 +lat_0=26 +lon_0=90 +k_0=0.99878641 +x_0=2743185.69 +y_0=914395.23 @94
24376|Kalianpur 1962 / India zone I|+proj=lcc +lat_1=32.5 +lat_0=32.5 +lon_0=68 +k_0=0.99878641 +x_0=2743196.4 +y_0=914398.8 @95
24377|Kalianpur 1962 / India zone IIa|+proj=lcc +lat_1=26 +lat_0=26 +lon_0=74 +k_0=0.99878641 +x_0=2743196.4 +y_0=914398.8 @95
24378|Kalianpur 1975 / India zone I|+proj=lcc +lat_1=32.5 +lat_0=32.5 +lon_0=68 +k_0=0.99878641 +x_0=2743195.5 +y_0=914398.5 @96
24379|Kalianpur 1975 / India zone IIa|+proj=lcc +lat_1=26 +lat_0=26 +lon_0=74 +k_0=0.99878641 +x_0=2743195.5 +y_0=914398.5 @96
24380|Kalianpur 1975 / India zone IIb|+proj=lcc +lat_1=26 +lat_0=26 +lon_0=90 +k_0=0.99878641 +x_0=2743195.5 +y_0=914398.5 @96
24381|Kalianpur 1975 / India zone IIIa|+proj=lcc +lat_1=19 +lat_0=19 +lon_0=80 +k_0=0.99878641 +x_0=2743195.5 +y_0=914398.5 @96
24383|Kalianpur 1975 / India zone IVa|+proj=lcc +lat_1=12 +lat_0=12 +lon_0=80 +k_0=0.99878641 +x_0=2743195.5 +y_0=914398.5 @96
24547x2|Kertau 1968 / UTM zone {47:1}N|+proj=utm +zone={47:1} @97
24719x2|La Canoa / UTM zone {19:1}N|+proj=utm +zone={19:1} @98
24818x4|PSAD56 / UTM zone {18:1}N|+proj=utm +zone={18:1} @22
24877x6|PSAD56 / UTM zone {17:1}S|+proj=utm +zone={17:1} +south @22
24891|PSAD56 / Peru west zone|+proj=tmerc +lat_0=-6 +lon_0=-80.5 +k=0.99983008 +x_0=222000 +y_0=1426834.743 @22
24892|PSAD56 / Peru central zone|+proj=tmerc +lat_0=-9.5 +lon_0=-76 +k=0.99932994 +x_0=720000 +y_0=1039979.159 @22
24893|PSAD56 / Peru east zone|+proj=tmerc +lat_0=-9.5 +lon_0=-70.5 +k=0.99952992 +x_0=1324000 +y_0=1040084.558 @22
25000|Leigon / Ghana Metre Grid|+proj=tmerc +lat_0=4.66666666666667 +lon_0=-1 +k=0.99975 +x_0=274319.51 @99
25231|Lome / UTM zone 31N|+proj=utm +zone=31 @100
25393|Luzon 1911 / Philippines zone III|+proj=tmerc +lon_0=121 +k=0.99995 +x_0=500000 @101
25394|Luzon 1911 / Philippines zone IV|+proj=tmerc +lon_0=123 +k=0.99995 +x_0=500000 @101
25395|Luzon 1911 / Philippines zone V|+proj=tmerc +lon_0=125 +k=0.99995 +x_0=500000 @101
25828x10|ETRS89 / UTM zone {28:1}N|+proj=utm +zone={28:1} @14
25884|ETRS89 / TM Baltic93|+proj=tmerc +lon_0=24 +k=0.9996 +x_0=500000 @14
26191|Merchich / Nord Maroc|+proj=lcc +lat_1=33.3 +lat_0=33.3 +lon_0=-5.4 +k_0=0.999625769 +x_0=500000 +y_0=300000 @102
26192|Merchich / Sud Maroc|+proj=lcc +lat_1=29.7 +lat_0=29.7 +lon_0=-5.4 +k_0=0.999615596 +x_0=500000 +y_0=300000 @102
26194|Merchich / Sahara Nord|+proj=lcc +lat_1=26.1 +lat_0=26.1 +lon_0=-5.4 +k_0=0.999616304 +x_0=1200000 +y_0=400000 @102
26195|Merchich / Sahara Sud|+proj=lcc +lat_1=22.5 +lat_0=22.5 +lon_0=-5.4 +k_0=0.999616437 +x_0=1500000 +y_0=400000 @102
26237|Massawa / UTM zone 37N|+proj=utm +zone=37 @103
26331|Minna / UTM zone 31N|+proj=utm +zone=31 @104
26391|Minna / Nigeria West Belt|+proj=tmerc +lat_0=4 +lon_0=4.5 +k=0.99975 +x_0=230738.26 @104
26392|Minna / Nigeria Mid Belt|+proj=tmerc +lat_0=4 +lon_0=8.5 +k=0.99975 +x_0=670553.98 @104
26393|Minna / Nigeria East Belt|+proj=tmerc +lat_0=4 +lon_0=12.5 +k=0.99975 +x_0=1110369.7 @104
26692|M'poraloko / UTM zone 32S|+proj=utm +zone=32 +south @105
26891x2|NAD83(CSRS) / MTM zone {11:1}|+proj=tmerc +lon_0=-{82.5:-1.5} +k=0.9999 +x_0=304800 @33
26893x4|NAD83(CSRS) / MTM zone {13:1}|+proj=tmerc +lon_0=-{84:3} +k=0.9999 +x_0=304800 @33
26899|NAD83(CSRS) / MTM zone 2|+proj=tmerc +lon_0=-56 +k=0.9999 +x_0=304800 @33
26901x23|NAD83 / UTM zone {1:1}N|+proj=utm +zone={1:1} @14
27039x2|Nahrwan 1967 / UTM zone {39:1}N|+proj=utm +zone={39:1} @106
27391|NGO 1948 (Oslo) / NGO zone I|+proj=tmerc +lat_0=58 +lon_0=-4.66666666666667 +k=1 @107
27392|NGO 1948 (Oslo) / NGO zone II|+proj=tmerc +lat_0=58 +lon_0=-2.33333333333333 +k=1 @107
27393|NGO 1948 (Oslo) / NGO zone III|+proj=tmerc +lat_0=58 +lon_0=0 +k=1 @107
27394|NGO 1948 (Oslo) / NGO zone IV|+proj=tmerc +lat_0=58 +lon_0=2.5 +k=1 @107
27395|NGO 1948 (Oslo) / NGO zone V|+proj=tmerc +lat_0=58 +lon_0=6.16666666666667 +k=1 @107
27396|NGO 1948 (Oslo) / NGO zone VI|+proj=tmerc +lat_0=58 +lon_0=10.1666666666667 +k=1 @107
27397|NGO 1948 (Oslo) / NGO zone VII|+proj=tmerc +lat_0=58 +lon_0=14.1666666666667 +k=1 @107
27398|NGO 1948 (Oslo) / NGO zone VIII|+proj=tmerc +lat_0=58 +lon_0=18.3333333333333 +k=1 @107
27429|Datum 73 / UTM zone 29N|+proj=utm +zone=29 @108
27493|Datum 73 / Modified Portuguese Grid|+proj=tmerc +lat_0=39.6666666666667 +lon_0=-8.13190611111111 +k=1 +x_0=180.598 +y_0=-86.99 @108
27561|NTF (Paris) / Lambert Nord France|+proj=lcc +lat_1=49.5 +lat_0=49.5 +lon_0=0 +k_0=0.999877341 +x_0=600000 +y_0=200000 @109
27562|NTF (Paris) / Lambert Centre France|+proj=lcc +lat_1=46.8 +lat_0=46.8 +lon_0=0 +k_0=0.99987742 +x_0=600000 +y_0=200000 @109
27563|NTF (Paris) / Lambert Sud France|+proj=lcc +lat_1=44.1 +lat_0=44.1 +lon_0=0 +k_0=0.999877499 +x_0=600000 +y_0=200000 @109
27571|NTF (Paris) / Lambert zone I|+proj=lcc +lat_1=49.5 +lat_0=49.5 +lon_0=0 +k_0=0.999877341 +x_0=600000 +y_0=1200000 @109
27572|NTF (Paris) / Lambert zone II|+proj=lcc +lat_1=46.8 +lat_0=46.8 +lon_0=0 +k_0=0.99987742 +x_0=600000 +y_0=2200000 @109
27573|NTF (Paris) / Lambert zone III|+proj=lcc +lat_1=44.1 +lat_0=44.1 +lon_0=0 +k_0=0.999877499 +x_0=600000 +y_0=3200000 @109
28191|Palestine 1923 / Palestine Grid|+proj=cass +lat_0=31.7340969444444 +lon_0=35.2120805555556 +x_0=170251.555 +y_0=126867.909 @71
28192|Palestine 1923 / Palestine Belt|+proj=tmerc +lat_0=31.7340969444444 +lon_0=35.2120805555556 +k=1 +x_0=170251.555 +y_0=1126867.909 @71
28232|Pointe Noire / UTM zone 32S|+proj=utm +zone=32 +south @110
28348x11|GDA94 / MGA zone {48:1}|+proj=utm +zone={48:1} +south @14
28404x27|Pulkovo 1942 / Gauss-Kruger zone {4:1}|+proj=tmerc +lon_0={21:6} +k=1 +x_0={4500000:1000000} @29
28431x2|Pulkovo 1942 / Gauss-Kruger zone {31:1}|+proj=tmerc +lon_0=-{177:-6} +k=1 +x_0={31500000:1000000} @29
28991|Amersfoort / RD Old|+proj=sterea +lat_0=52.1561605555556 +lon_0=5.38763888888889 +k=0.9999079 +x_0=0 +y_0=0 @111
28992|Amersfoort / RD New|+proj=sterea +lat_0=52.1561605555556 +lon_0=5.38763888888889 +k=0.9999079 +x_0=155000 +y_0=463000 @111
29101|SAD69 / Brazil Polyconic|+proj=poly +lat_0=0 +lon_0=-54 +x_0=5000000 +y_0=10000000 @112
29168x5|SAD69 / UTM zone {18:1}N|+proj=utm +zone={18:1} @112
29187x9|SAD69 / UTM zone {17:1}S|+proj=utm +zone={17:1} +south @112
29333|Schwarzeck / UTM zone 33S|+proj=utm +zone=33 +south @113
29702|Tananarive (Paris) / Laborde Grid approximation|+proj=omerc +lat_0=-18.9 +lonc=44.1 +alpha=18.9 +gamma=18.9 +k=0.9995 +x_0=400000 +y_0=800000 @114
29738x2|Tananarive / UTM zone {38:1}S|+proj=utm +zone={38:1} +south @115
29849x2|Timbalai 1948 / UTM zone {49:1}N|+proj=utm +zone={49:1} @116
29873|Timbalai 1948 / RSO Borneo (m)|+proj=omerc +lat_0=4 +lonc=115 +alpha=53.3158204722222 +gamma=53.1301023611111 +k=0.99984 +x_0=590476.87 +y_0=442857.65 @116
29874|Timbalai 1948 / RSO Sarawak LSD (m)|+proj=omerc +no_uoff +lat_0=4 +lonc=115 +alpha=53.3158204722222 +gamma=53.1301023611111 +k=0.99984 +x_0=2000000 +y_0=5000000 @116
29902x2|TM{65:10} / Irish Grid|+proj=tmerc +lat_0=53.5 +lon_0=-8 +k=1.000035 +x_0=200000 +y_0=250000 @117
30161|Tokyo / Japan Plane Rectangular CS I|+proj=tmerc +lat_0=33 +lon_0=129.5 +k=0.9999 @38
30162|Tokyo / Japan Plane Rectangular CS II|+proj=tmerc +lat_0=33 +lon_0=131 +k=0.9999 @38
30168|Tokyo / Japan Plane Rectangular CS VIII|+proj=tmerc +lat_0=36 +lon_0=138.5 +k=0.9999 @38
30169|Tokyo / Japan Plane Rectangular CS IX|+proj=tmerc +lat_0=36 +lon_0=139.833333333333 +k=0.9999 @38
30170|Tokyo / Japan Plane Rectangular CS X|+proj=tmerc +lat_0=40 +lon_0=140.833333333333 +k=0.9999 @38
30172|Tokyo / Japan Plane Rectangular CS XII|+proj=tmerc +lat_0=44 +lon_0=142.25 +k=0.9999 @38
30173|Tokyo / Japan Plane Rectangular CS XIII|+proj=tmerc +lat_0=44 +lon_0=144.25 +k=0.9999 @38
30491|Voirol 1875 / Nord Algerie (ancienne)|+proj=lcc +lat_1=36 +lat_0=36 +lon_0=2.7 +k_0=0.999625544 +x_0=500000 +y_0=300000 @118
30492|Voirol 1875 / Sud Algerie (ancienne)|+proj=lcc +lat_1=33.3 +lat_0=33.3 +lon_0=2.7 +k_0=0.999625769 +x_0=500000 +y_0=300000 @118
30493|Voirol 1879 / Nord Algerie (ancienne)|+proj=lcc +lat_1=36 +lat_0=36 +lon_0=2.7 +k_0=0.999625544 +x_0=500000 +y_0=300000 @100
30494|Voirol 1879 / Sud Algerie (ancienne)|+proj=lcc +lat_1=33.3 +lat_0=33.3 +lon_0=2.7 +k_0=0.999625769 +x_0=500000 +y_0=300000 @100
30729x4|Nord Sahara 1959 / UTM zone {29:1}N|+proj=utm +zone={29:1} @119
30791|Nord Sahara 1959 / Nord Algerie|+proj=lcc +lat_1=36 +lat_0=36 +lon_0=2.7 +k_0=0.999625544 +x_0=500135 +y_0=300090 @119
30792|Nord Sahara 1959 / Sud Algerie|+proj=lcc +lat_1=33.3 +lat_0=33.3 +lon_0=2.7 +k_0=0.999625769 +x_0=500135 +y_0=300090 @119
31028|Yoff / UTM zone 28N|+proj=utm +zone=28 @120
31121|Zanderij / UTM zone 21N|+proj=utm +zone=21 @121
31154|Zanderij / TM 54 NW|+proj=tmerc +lon_0=-54 +k=0.9996 +x_0=500000 @121
31170|Zanderij / Suriname Old TM|+proj=tmerc +lon_0=-55.6833333333333 +k=0.9996 +x_0=500000 @121
31171|Zanderij / Suriname TM|+proj=tmerc +lon_0=-55.6833333333333 +k=0.9999 +x_0=500000 @121
31287|MGI / Austria Lambert|+proj=lcc +lat_0=47.5 +lon_0=13.3333333333333 +lat_1=49 +lat_2=46 +x_0=400000 +y_0=400000 @122
31528x2|Conakry 1905 / UTM zone {28:1}N|+proj=utm +zone={28:1} @123
31600|Dealul Piscului 1930 / Stereo 33|+proj=sterea +lat_0=45.9 +lon_0=25.3924658888889 +k=0.9996667 +x_0=500000 +y_0=500000 @124
31965x12|SIRGAS 2000 / UTM zone {11:1}N|+proj=utm +zone={11:1} @14
31977x9|SIRGAS 2000 / UTM zone {17:1}S|+proj=utm +zone={17:1} +south @14
31986x6|SIRGAS 1995 / UTM zone {17:1}N|+proj=utm +zone={17:1} @14
31992x9|SIRGAS 1995 / UTM zone {17:1}S|+proj=utm +zone={17:1} +south @14
32182x2|NAD83 / MTM zone {2:1}|+proj=tmerc +lon_0=-{56:2.5} +k=0.9999 +x_0=304800 @14
32184x8|NAD83 / MTM zone {4:1}|+proj=tmerc +lon_0=-{61.5:3} +k=0.9999 +x_0=304800 @14
32192x5|NAD83 / MTM zone {12:1}|+proj=tmerc +lon_0=-{81:3} +k=0.9999 +x_0=304800 @14
32198|NAD83 / Quebec Lambert|+proj=lcc +lat_0=44 +lon_0=-68.5 +lat_1=60 +lat_2=46 +x_0=0 +y_0=0 @14
32601x60|WGS 84 / UTM zone {1:1}N|+proj=utm +zone={1:1} @20
32701x60|WGS 84 / UTM zone {1:1}S|+proj=utm +zone={1:1} +south @20
32766|WGS 84 / TM 36 SE|+proj=tmerc +lon_0=36 +k=0.9996 +x_0=500000 +y_0=10000000 @20`;

/** Ellipsoids and datum shifts of the systems above, as proj strings. */
export const EPSG_DATUMS = `+a=6378249.145 +rf=293.465 +towgs84=-125,53,467,0,0,0,0
+a=6378249.145 +rf=293.465 +towgs84=-124.76,53,466.79,0,0,0,0
+ellps=krass +towgs84=-17.51,-108.32,-62.39,0,0,0,0
+ellps=WGS84
+ellps=bessel +towgs84=674.374,15.056,405.346,0,0,0,0
+ellps=intl +towgs84=-110.33,-97.73,-119.85,0.3423,1.1634,0.2715,0.063
+a=6378298.3 +rf=294.73 +pm=-3.687375
+ellps=bessel +pm=ferro
+ellps=intl +towgs84=-115.8543,-99.0583,-152.4616,0,0,0,0
+ellps=intl +towgs84=15.75,164.93,126.18,0,0,0,0
+ellps=intl +towgs84=-233.43,6.65,173.64,0,0,0,0
+ellps=clrk80ign +towgs84=-263,6,431,0,0,0,0
+ellps=bessel +towgs84=-145.907,505.034,685.756,-1.162,2.347,1.592,6.342
+ellps=GRS80 +towgs84=-199.87,74.79,246.62,0,0,0,0
+ellps=GRS80
+a=6378300 +rf=296 +towgs84=-199,32,322,0,0,0,0
+ellps=krass +towgs84=2.329,-147.042,-92.08,0.309,-0.325,-0.497,5.69
+ellps=intl +towgs84=-87,-98,-121,0,0,0,0
+ellps=intl +towgs84=163.511,127.533,-159.789,0,0,0.814,-0.6
+ellps=bessel +towgs84=-377,681,-50,0,0,0,0
+datum=WGS84
+ellps=intl +towgs84=-148,136,90,0,0,0,0
+ellps=intl +towgs84=-288,175,-376,0,0,0,0
+ellps=intl +towgs84=-143,-236,7,0,0,0,0
+ellps=IAU76
+ellps=intl +towgs84=-96.062,-82.428,-121.753,-4.801,-0.345,1.376,1.496
+ellps=krass +towgs84=-76,-138,67,0,0,0,0
+ellps=krass +towgs84=26,-121,-78,0,0,0,0
+ellps=krass +towgs84=15.8,-154.4,-82.3,0,0,0,0
+ellps=krass +towgs84=25,-141,-78.5,0,-0.35,-0.736,0
+ellps=krass +towgs84=24.47,-130.89,-81.56,0,0,-0.13,-0.22
+ellps=clrk66 +towgs84=-80,-100,-228,0,0,0,0
+ellps=clrk80ign +towgs84=-106,-87,188,0,0,0,0
+ellps=GRS80 +towgs84=-0.991,1.9072,0.5129,-1.25033e-07,-4.6785e-08,-5.6529e-08,0
+ellps=intl +towgs84=-104.1,-49.1,-9.9,0.971,-2.917,0.714,-11.68
+ellps=bessel +towgs84=414.1,41.3,603.1,0.855,-2.141,7.023,0
+ellps=bessel
+ellps=intl +towgs84=-73,47,-83,0,0,0,0
+ellps=bessel +towgs84=-146.414,507.337,680.507,0,0,0,0
+ellps=evrst30 +towgs84=283.729,735.942,261.143,0,0,0,0
+ellps=aust_SA +towgs84=-117.808,-51.536,137.784,-0.303,-0.446,-0.234,-0.29
+ellps=clrk66 +towgs84=-127.62,-67.24,-47.04,3.068,-4.903,-1.578,-1.06
+ellps=intl +towgs84=265.025,384.929,-194.046,0,0,0,0
+ellps=evrst30 +towgs84=198,881,317,0,0,0,0
+ellps=evrst69
+ellps=intl +towgs84=-208.4058,-109.8777,-2.5764,0,0,0,0
+a=6378249.145 +rf=293.465 +towgs84=-241.54,-163.64,396.06,0,0,0,0
+ellps=GRS80 +towgs84=0.072,-0.507,-0.245,0.0183,-0.0003,0.007,-0.0093
+ellps=GRS80 +towgs84=0.055,-0.541,-0.185,-0.0183,0.0003,0.007,-0.014
+a=6378249.145 +rf=293.465
+a=6378249.145 +rf=293.465 +towgs84=70.995,-335.916,262.898,0,0,0,0
+a=6378249.145 +rf=293.465 +towgs84=-242.2,-144.9,370.3,0,0,0,0
+ellps=WGS84 +towgs84=-191.90441429,-39.30318279,-111.45032835,-0.00928836,0.01975479,-0.00427372,0.252906278
+a=6378249.145 +rf=293.465 +towgs84=-180.624,-225.516,173.919,-0.81,-1.898,8.336,16.71006
+a=6378135 +rf=298.26 +towgs84=0,0,4.5,0,0,0.554,0.2263
+ellps=clrk80ign +towgs84=-83,37,124,0,0,0,0
+ellps=intl +towgs84=-637,-549,-203,0,0,0,0
+ellps=clrk66 +towgs84=-102.283,-10.277,-257.396,-3.976,-0.002,-6.203,12.315
+ellps=krass
+ellps=intl +towgs84=-288.885,-91.744,126.244,1.691,-0.41,0.211,-4.598
+ellps=evrst30 +towgs84=-97,787,86,0,0,0,0
+ellps=evrst30 +towgs84=-0.293,766.95,87.713,-0.195704,-1.695068,-3.473016,-0.039338
+ellps=intl +towgs84=-151.99,287.04,-147.45,0,0,0,0
+ellps=WGS84 +towgs84=-0.41,0.46,-0.35,0,0,0,0
+ellps=WGS84 +towgs84=-0.16959,0.35312,0.51846,-0.03385,0.16325,-0.03446,0.03693
+ellps=clrk66 +towgs84=205,96,-98,0,0,0,0
+ellps=clrk66
+ellps=bessel +towgs84=589,76,480,0,0,0,0
+ellps=aust_SA +towgs84=-67.35,3.88,-38.22,0,0,0,0
+ellps=krass +towgs84=24,-121,-76,0,0,0,0
+ellps=bessel +towgs84=682,-203,480,0,0,0,0
+a=6378300.789 +b=6356566.435 +towgs84=-275.7224,94.7824,340.8944,-8.001,-4.42,-11.821,1
+a=6376045 +rf=310 +pm=ferro
+ellps=bessel +towgs84=485.021,169.465,483.839,-7.786342,-4.397554,-4.102655,0
+ellps=intl +towgs84=-9.5,122.9,138.2,0,0,0,0
+ellps=intl +towgs84=-78.1,101.6,133.3,0,0,0,0
+ellps=GRS80 +towgs84=0,0,0,-8.393,0.749,-10.276,0
+ellps=intl +towgs84=-307,-92,127,0,0,0,0
+a=6378249.145 +rf=293.465 +towgs84=-166,-15,204,0,0,0,0
+ellps=krass +towgs84=-43,-163,45,0,0,0,0
+ellps=intl +pm=lisbon
+a=6378249.145 +rf=293.4663077 +towgs84=-143,-90,-294,0,0,0,0
+a=6378249.145 +rf=293.465 +towgs84=-160,-6,-302,0,0,0,0
+ellps=bessel +pm=bern
+ellps=intl +towgs84=307,304,-318,0,0,0,0
+a=6378249.145 +rf=293.465 +towgs84=-50.9,-347.6,-231,0,0,0,0
+a=6378249.145 +rf=293.4663077 +towgs84=-136,-108,-292,0,0,0,0
+ellps=clrk80ign +towgs84=-190.421,8.532,238.69,0,0,0,0
+ellps=helmert +towgs84=-127.535,113.495,-12.7,1.603747,-0.153612,-5.364408,5.33745
+a=6378249.145 +rf=293.465 +towgs84=-345,3,223,0,0,0,0
+ellps=GRS67 +towgs84=52.17,-71.82,-14.9,0,0,0,0
+a=6378160 +rf=298.247 +towgs84=-1.977,-13.06,-9.993,-0.364,-0.254,-0.689,-1.037
+ellps=evrst30 +towgs84=217,823,299,0,0,0,0
+ellps=evrst30 +towgs84=293,836,318,0.5,1.6,-2.8,2.1
+ellps=evrst30 +towgs84=214,804,268,0,0,0,0
+a=6377301.243 +rf=300.8017255 +towgs84=283,682,231,0,0,0,0
+a=6377299.151 +rf=300.8017255 +towgs84=295,736,257,0,0,0,0
+ellps=evrst48 +towgs84=-11,851,5,0,0,0,0
+ellps=intl +towgs84=-270.933,115.599,-360.226,-5.266,-1.238,2.381,-5.109
+a=6378249.145 +rf=293.465 +towgs84=-130,29,364,0,0,0,0
+ellps=clrk80ign
+ellps=clrk66 +towgs84=-133,-77,-51,0,0,0,0
+ellps=clrk80ign +towgs84=31,146,47,0,0,0,0
+ellps=bessel +towgs84=639,405,60,0,0,0,0
+a=6378249.145 +rf=293.465 +towgs84=-92,-93,122,0,0,0,0
+ellps=clrk80ign +towgs84=-80.7,-132.5,41.1,0,0,0,0
+a=6378249.145 +rf=293.465 +towgs84=-249,-156,381,0,0,0,0
+a=6377492.018 +rf=299.1528128 +pm=oslo
+ellps=intl +towgs84=-239.749,88.181,30.488,-0.263,-0.082,-1.211,2.229
+ellps=clrk80ign +pm=paris
+ellps=clrk80ign +towgs84=-148,51,-291,0,0,0,0
+ellps=bessel +towgs84=565.4171,50.3319,465.5524,1.9342,-1.6677,9.1019,4.0725
+ellps=aust_SA +towgs84=-57,1,-41,0,0,0,0
+ellps=bess_nam +towgs84=616,97,-251,0,0,0,0
+ellps=intl +pm=paris
+ellps=intl +towgs84=-198.383,-240.517,-107.909,0,0,0,0
+ellps=evrstSS +towgs84=-679,669,-48,0,0,0,0
+a=6377340.189 +rf=299.3249646 +towgs84=482.5,-130.6,564.6,-1.042,-0.214,-0.631,8.15
+ellps=clrk80ign +towgs84=-73,-247,227,0,0,0,0
+a=6378249.145 +rf=293.465 +towgs84=-209.3622,-87.8162,404.6198,0.0046,3.4784,0.5805,-1.4547
+ellps=clrk80ign +towgs84=-30,190,89,0,0,0,0
+ellps=intl +towgs84=-265,120,-358,0,0,0,0
+ellps=bessel +towgs84=577.326,90.129,463.919,5.137,1.474,5.297,2.4232
+ellps=clrk80ign +towgs84=-23,259,-9,0,0,0,0
+ellps=intl +towgs84=103.25,-100.4,-307.19,0,0,0,0`;
